import type { PrimitiveElement } from "@probeworthy/circuit";
import type { CompiledVehicle } from "../compile/compile-vehicle";
import { openOhms } from "../compile/fault-overlay";
import { nodeOf, parsePoint } from "../points/point-ids";
import { err, ok, type Result } from "../result";
import type { VehicleError, VehicleState } from "../simulation/types";

/** A private node of an instrument: anything but `body` that starts with a small letter. */
const isPrivate = (name: string): boolean => /^[a-z]/.test(name) && name !== "body";

/** Finds the electrical nodes of points and private nodes, as far as they are asked for. */
class NodeFinder {
  private readonly handFuses = new Set<string>();
  unknown: string | undefined;

  constructor(
    private readonly compiled: CompiledVehicle,
    private readonly state: VehicleState,
  ) {}

  readonly find = (name: string): string => {
    const { index } = this.compiled;
    if (isPrivate(name)) return `fixture#${name}`;
    const point = parsePoint(name, index);
    if (!point) {
      this.unknown ??= name;
      return name;
    }
    if (point.kind !== "blade") return nodeOf(point, index);
    // The blades of a fitted fuse touch its sockets.
    if (!this.state.pulledFuses.includes(point.fuse)) return `${point.fuse}:${point.terminal}`;
    this.handFuses.add(point.fuse);
    return nodeOf(point, index);
  };

  /** The pulled fuses whose blades were asked for: they are not in the network unless something touches them. */
  get fusesInHand(): PrimitiveElement[] {
    return [...this.handFuses].sort().flatMap((id): PrimitiveElement[] => {
      const fuse = this.compiled.fuses.find((entry) => entry.id === id);
      if (!fuse) return [];
      const ohms = this.state.slow.blownFuses.includes(id) ? openOhms : fuse.coldOhms;
      return [{ kind: "resistor", id: `${id}#inHand`, a: `${id}:1:p`, b: `${id}:2:p`, ohms }];
    });
  }
}

const unknownPoint = (id: string): VehicleError => ({
  code: "unknown_point",
  path: id,
  message: `there is no test point ${id}`,
});

/** Puts an instrument's elements, written between test points, onto the electrical nodes of a vehicle. */
export function mapFixtures(
  compiled: CompiledVehicle,
  state: VehicleState,
  fixtures: readonly PrimitiveElement[],
): Result<PrimitiveElement[], VehicleError> {
  const nodes = new NodeFinder(compiled, state);
  const mapped = fixtures.map((element) => mapElement(element, nodes.find));
  if (nodes.unknown !== undefined) return err(unknownPoint(nodes.unknown));
  return ok([...mapped, ...nodes.fusesInHand]);
}

/** The electrical nodes of two test points, and the elements that have to be added for them to be there. */
export function mapPoints(
  compiled: CompiledVehicle,
  state: VehicleState,
  points: readonly [string, string],
): Result<{ nodes: readonly [string, string]; extra: PrimitiveElement[] }, VehicleError> {
  const missing = points.find((point) => !parsePoint(point, compiled.index));
  if (missing !== undefined) return err(unknownPoint(missing));
  const nodes = new NodeFinder(compiled, state);
  const [a, b] = points;
  return ok({ nodes: [nodes.find(a), nodes.find(b)], extra: nodes.fusesInHand });
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
