import type { PrimitiveElement } from "@probeworthy/circuit";
import type { CompiledVehicle } from "../compile/compile-vehicle";
import { openOhms } from "../compile/fault-overlay";
import { nodeOf, parsePoint } from "../points/point-ids";
import { err, ok, type Result } from "../result";
import type { VehicleError, VehicleState } from "../simulation/types";

/** A private node of an instrument: anything but `body` that starts with a small letter. */
const isPrivate = (name: string): boolean => /^[a-z]/.test(name) && name !== "body";

/** Puts an instrument's elements, written between test points, onto the electrical nodes of a vehicle. */
export function mapFixtures(
  compiled: CompiledVehicle,
  state: VehicleState,
  fixtures: readonly PrimitiveElement[],
): Result<PrimitiveElement[], VehicleError> {
  const handFuses = new Set<string>();
  let unknown: string | undefined;
  const toNode = (name: string): string => {
    if (isPrivate(name)) return `fixture#${name}`;
    const point = parsePoint(name, compiled.index);
    if (!point) {
      unknown ??= name;
      return name;
    }
    if (point.kind !== "blade") return nodeOf(point, compiled.index);
    if (!state.pulledFuses.includes(point.fuse)) return `${point.fuse}:${point.terminal}`;
    handFuses.add(point.fuse);
    return nodeOf(point, compiled.index);
  };
  const mapped = fixtures.map((element) => mapElement(element, toNode));
  if (unknown !== undefined)
    return err({ code: "unknown_point", path: unknown, message: `there is no test point ${unknown}` });
  for (const id of [...handFuses].sort()) {
    const fuse = compiled.fuses.find((entry) => entry.id === id);
    if (!fuse) continue;
    const ohms = state.slow.blownFuses.includes(id) ? openOhms : fuse.coldOhms;
    mapped.push({ kind: "resistor", id: `${id}#inHand`, a: `${id}:1:p`, b: `${id}:2:p`, ohms });
  }
  return ok(mapped);
}

function mapElement(element: PrimitiveElement, toNode: (name: string) => string): PrimitiveElement {
  switch (element.kind) {
    case "resistor":
    case "switch":
    case "filament":
    case "capacitor":
    case "inductor":
    case "curve":
      return { ...element, a: toNode(element.a), b: toNode(element.b) };
    case "voltageSource":
      return { ...element, positive: toNode(element.positive), negative: toNode(element.negative) };
    case "currentSource":
      return { ...element, from: toNode(element.from), to: toNode(element.to) };
    case "diode":
      return { ...element, anode: toNode(element.anode), cathode: toNode(element.cathode) };
    case "regulator":
      return {
        ...element,
        input: toNode(element.input),
        output: toNode(element.output),
        reference: toNode(element.reference),
      };
    case "controlledSource":
      return {
        ...element,
        positive: toNode(element.positive),
        negative: toNode(element.negative),
        ...(element.controlPositive === undefined
          ? {}
          : { controlPositive: toNode(element.controlPositive) }),
        ...(element.controlNegative === undefined
          ? {}
          : { controlNegative: toNode(element.controlNegative) }),
      };
  }
}
