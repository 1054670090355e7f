import type { CircuitElement, Network, NodeName } from "./network";
import { fail, type Result, succeed } from "./result";
import { terminalsOf } from "./validate-element";

/** How names map to unknowns: nodes 0 … nodeCount−1 (named ones first), then branches; ground is `size`. */
export interface Numbering {
  readonly ground: number;
  readonly nodeCount: number;
  readonly size: number;
  /** Every node name, ground among them, by first appearance. */
  readonly names: readonly NodeName[];
  readonly indexOf: ReadonlyMap<NodeName, number>;
  /** Hidden node between the junction and the series resistance of a diode, by element id. */
  readonly junctionNode: ReadonlyMap<string, number>;
  /** Unknown of each element whose current is one. */
  readonly branchUnknown: ReadonlyMap<string, number>;
}

type Named = ReadonlyMap<string, CircuitElement>;

export function numberUnknowns(network: Network, byId: Named): Result<Numbering> {
  const sensed = collectSensed(network, byId);
  if (!sensed.ok) return sensed;
  const names = new Set<NodeName>();
  for (const element of network.elements) {
    for (const node of terminalsOf(element)) names.add(node);
    if (element.kind === "controlledSource") {
      if (element.controlPositive !== undefined) names.add(element.controlPositive);
      if (element.controlNegative !== undefined) names.add(element.controlNegative);
    }
  }
  if (!names.has(network.ground)) {
    const message = `No element touches the ground node "${network.ground}".`;
    return fail("missing_ground", message, { node: network.ground });
  }
  const indexOf = new Map<NodeName, number>();
  for (const name of names) if (name !== network.ground) indexOf.set(name, indexOf.size);
  let next = indexOf.size;
  const junctionNode = new Map<string, number>();
  for (const element of network.elements) {
    if (element.kind === "diode" && element.seriesOhms !== undefined) junctionNode.set(element.id, next++);
  }
  const nodeCount = next;
  const branchUnknown = new Map<string, number>();
  for (const element of network.elements) {
    if (sensed.value.has(element.id) || definesVoltage(element)) branchUnknown.set(element.id, next++);
  }
  indexOf.set(network.ground, next);
  return succeed({
    ground: next,
    nodeCount,
    size: next,
    names: [...names],
    indexOf,
    junctionNode,
    branchUnknown,
  });
}

/** True for an element that fixes a voltage whatever current flows. */
export function definesVoltage(element: CircuitElement): boolean {
  if (element.kind === "voltageSource") return element.ohms === undefined;
  return element.kind === "controlledSource" && (element.type === "vcvs" || element.type === "ccvs");
}

/** Ids of the elements whose current controls another. */
function collectSensed(network: Network, byId: Named): Result<ReadonlySet<string>> {
  const sensed = new Set<string>();
  for (const element of network.elements) {
    if (element.kind !== "controlledSource") continue;
    if (element.type === "vcvs" || element.type === "vccs") {
      if (element.controlPositive && element.controlNegative) continue;
      const message = `"${element.id}" is a ${element.type} and needs controlPositive and controlNegative.`;
      return fail("missing_control", message, { element: element.id });
    }
    const control = element.controlElement === undefined ? undefined : byId.get(element.controlElement);
    if (!control || !canSense(control)) {
      const message = `"${element.id}" is a ${element.type} and needs a controlElement that is a resistor, a switch, a voltage source, a vcvs or a ccvs; it names "${element.controlElement}".`;
      return fail("missing_control", message, { element: element.id });
    }
    sensed.add(control.id);
  }
  return succeed(sensed);
}

function canSense(element: CircuitElement): boolean {
  return (
    element.kind === "resistor" ||
    element.kind === "switch" ||
    element.kind === "voltageSource" ||
    definesVoltage(element)
  );
}
