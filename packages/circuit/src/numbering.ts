import type { Part } from "./elements/definition";
import { controlNodesOf, definesVoltage, type Expanded, nodesOf } from "./expansion";
import type { CircuitElement, Network, NodeName } from "./network";
import { fail, type Result, succeed } from "./result";

/**
 * How names map to unknowns: nodes 0 … nodeCount−1 (named ones first, then those hidden inside elements), then branch
 * currents and the internal unknowns of devices; ground is `size`.
 */
export interface Numbering {
  readonly ground: number;
  readonly nodeCount: number;
  readonly size: number;
  /** Every node name, ground among them, by first appearance. */
  readonly names: readonly NodeName[];
  readonly indexOf: ReadonlyMap<NodeName, number>;
  /** By part, the rows of its nodes. */
  readonly nodes: readonly (readonly number[])[];
  /** By part, its first unknown beyond nodes: of a branch, or of a device's internals; −1 where there is none. */
  readonly unknown: Int32Array;
  /** Unknown of the branch of an element that others may sense, by id. */
  readonly branchOf: ReadonlyMap<string, number>;
  /** Element to blame for each row that is not that of a named node. */
  readonly owner: ReadonlyMap<number, string>;
}

export function numberUnknowns(network: Network, expanded: readonly Expanded[]): Result<Numbering> {
  const sensed = collectSensed(network);
  if (!sensed.ok) return sensed;
  const names = new Set<NodeName>();
  for (const { element, definition } of expanded) {
    for (const node of definition.terminals(element)) names.add(node);
    for (const node of controlNodesOf(element)) names.add(node);
  }
  if (typeof network.ground !== "string") return fail("missing_ground", "The ground has no name.");
  if (!names.has(network.ground)) {
    const message = `No element touches the ground node "${network.ground}".`;
    return fail("missing_ground", message, { node: network.ground });
  }
  const indexOf = new Map<NodeName, number>();
  for (const name of names) if (name !== network.ground) indexOf.set(name, indexOf.size);

  let next = indexOf.size;
  const owner = new Map<number, string>();
  const own = (id: string): number => {
    owner.set(next, id);
    return next++;
  };
  const ground = -1;
  const nodes: number[][] = [];
  for (const { element, definition, parts } of expanded) {
    const isNamed = new Set(definition.terminals(element));
    const hidden = new Map<NodeName, number>();
    for (const part of parts) {
      nodes.push(
        nodesOf(part).map((name) => {
          if (isNamed.has(name)) return indexOf.get(name) ?? ground;
          const row = hidden.get(name) ?? own(element.id);
          hidden.set(name, row);
          return row;
        }),
      );
    }
  }
  const nodeCount = next;
  const unknown = new Int32Array(nodes.length).fill(-1);
  const branchOf = new Map<string, number>();
  for (const { element, parts, firstPart } of expanded) {
    for (const [i, part] of parts.entries()) {
      const isSensed = part.id === element.id && sensed.value.has(element.id);
      const count =
        part.kind === "device" ? part.law.internals.length : Number(isSensed || definesVoltage(part));
      if (count === 0) continue;
      unknown[firstPart + i] = own(element.id);
      for (let k = 1; k < count; k++) own(element.id);
      if (part.id === element.id && part.kind !== "device") branchOf.set(element.id, unknown[firstPart + i]);
    }
  }
  indexOf.set(network.ground, next);
  for (const rows of nodes) for (const [i, row] of rows.entries()) if (row === ground) rows[i] = next;
  return succeed({
    ground: next,
    nodeCount,
    size: next,
    names: [...names],
    indexOf,
    nodes,
    unknown,
    branchOf,
    owner,
  });
}

/** Ids of the elements whose current controls another. */
function collectSensed(network: Network): Result<ReadonlySet<string>> {
  const byId = new Map(network.elements.map((element) => [element.id, element]));
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
      const message = `"${element.id}" is a ${element.type} and needs a controlElement that is a resistor, a switch, an inductor, a voltage source, a vcvs or a ccvs; it names "${element.controlElement}".`;
      return fail("missing_control", message, { element: element.id });
    }
    sensed.add(control.id);
  }
  return succeed(sensed);
}

function canSense(element: CircuitElement): boolean {
  if (element.kind === "controlledSource") return definesVoltage(element satisfies Part);
  return (
    element.kind === "resistor" ||
    element.kind === "switch" ||
    element.kind === "inductor" ||
    element.kind === "voltageSource"
  );
}
