import type { AttachedFigures } from "./attachments";
import type { Binding } from "./bindings";
import type { OperatingPoint } from "./circuit";
import type { Look } from "./elements/definition";
import { type Expanded, nodesOf } from "./expansion";
import type { NodeName } from "./network";
import type { Numbering } from "./numbering";

/** Where the names of a circuit point to; made once and shared by all its operating points. */
export interface Directory {
  readonly numbering: Numbering;
  readonly expanded: readonly Expanded[];
  /** Position in `expanded` by element id. */
  readonly position: ReadonlyMap<string, number>;
  /** By element, the flows that add up to its current: number and sign in turn. */
  readonly flowsOf: readonly (readonly number[])[];
  /** By part, its first flow and how many make up its current. */
  readonly partFlow: Int32Array;
  readonly partFlowCount: Int32Array;
}

/** The numbers of a solution, by the numbering of its circuit. */
export interface Figures {
  readonly high: Float64Array;
  readonly low: Float64Array;
  readonly amps: Float64Array;
  /** Discrete state by element. */
  readonly states: Int32Array;
  readonly iterations: number;
  readonly residualAmps: number;
  readonly floating: readonly number[];
  /** False for an operating point. */
  readonly isTimed: boolean;
  readonly attached: AttachedFigures | undefined;
}

export function createDirectory(
  expanded: readonly Expanded[],
  numbering: Numbering,
  bindings: readonly Binding[],
  timed: boolean,
): Directory {
  return {
    numbering,
    expanded,
    position: new Map(expanded.map(({ element }, i) => [element.id, i])),
    partFlow: Int32Array.from(bindings, (binding) => binding.flow),
    partFlowCount: Int32Array.from(bindings, (binding) => binding.flowCount),
    flowsOf: expanded.map(({ element, definition, parts, firstPart }) =>
      definition.amps(element, timed).flatMap(([id, sign]) => {
        const { flow, flowCount } = bindings[firstPart + parts.findIndex((part) => part.id === id)];
        return flowCount === 2 ? [flow, sign, flow + 1, sign] : [flow, sign];
      }),
    ),
  };
}

/** The same figures, no longer moving with the solver; attached elements are the caller's to freeze. */
export const freezeFigures = (figures: Figures): Figures => ({
  ...figures,
  high: figures.high.slice(),
  low: figures.low.slice(),
  amps: figures.amps.slice(),
  states: figures.states.slice(),
});

/** Reads figures by name. They may be the solver's own, then the answer moves with them. */
export function readFigures(figures: Figures, directory: Directory): OperatingPoint {
  const { numbering, expanded, position, flowsOf } = directory;
  const { high, amps } = figures;
  const requirePosition = (id: string): number => {
    const index = position.get(id);
    if (index === undefined) throw new Error(`The network has no element "${id}".`);
    return index;
  };
  return {
    volts: (node) => {
      const index = numbering.indexOf.get(node);
      if (index === undefined) throw new Error(`The network has no node "${node}".`);
      return high[index];
    },
    amps: (id) => attachedAmps(id, figures.attached) ?? sumFlows(flowsOf[requirePosition(id)], amps),
    quantity: (id, name) => {
      const index = requirePosition(id);
      const value = findQuantity(index, name, figures, directory);
      if (value === undefined)
        throw new Error(`"${id}" is a ${expanded[index].element.kind} and has no quantity "${name}".`);
      return value;
    },
    get floatingNodes() {
      return nameFloating(figures.floating, numbering);
    },
    get iterations() {
      return figures.iterations;
    },
    get residualAmps() {
      return figures.residualAmps;
    },
  };
}

function attachedAmps(id: string, attached: AttachedFigures | undefined): number | undefined {
  if (!attached) return undefined;
  const at = attached.elements.findIndex((element) => element.id === id);
  return at < 0 ? undefined : attached.ports.x.amps[attached.bindings[at].flow];
}

function sumFlows(flows: readonly number[], amps: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < flows.length; k += 2) sum += flows[k + 1] * amps[flows[k]];
  return sum;
}

function findQuantity(
  index: number,
  name: string,
  figures: Figures,
  directory: Directory,
): number | undefined {
  const { element, definition, parts, firstPart } = directory.expanded[index];
  const state = figures.states[index];
  const stated = definition.quantities?.(element, state, lookInto(index, figures, directory));
  if (stated && Object.hasOwn(stated, name)) return stated[name];
  for (const [i, part] of parts.entries()) {
    const found = internalOf(part, directory.numbering.unknown[firstPart + i], name, figures);
    if (found !== undefined) return found;
  }
  return undefined;
}

function internalOf(
  part: Expanded["parts"][number],
  unknown: number,
  name: string,
  { high, low }: Figures,
): number | undefined {
  if (part.kind !== "device") return undefined;
  const k = part.law.internals.findIndex((internal) => internal.name === name);
  return k < 0 ? undefined : high[unknown + k] + low[unknown + k];
}

/** What the rules of one element may see of a solution. Asking for a part or node the element does not have throws. */
export function lookInto(index: number, figures: Figures, directory: Directory): Look {
  const { numbering, expanded, partFlow, partFlowCount } = directory;
  const { element, parts, firstPart } = expanded[index];
  const find = (id: string): number => {
    const i = parts.findIndex((part) => part.id === id);
    if (i < 0) throw new Error(`"${element.id}" has no part "${id}".`);
    return i;
  };
  const rowOf = (name: NodeName): number => {
    for (const [i, part] of parts.entries()) {
      const k = nodesOf(part).indexOf(name);
      if (k >= 0) return numbering.nodes[firstPart + i][k];
    }
    throw new Error(`"${element.id}" has no node "${name}".`);
  };
  return {
    volts: (node) => figures.high[rowOf(node)],
    amps: (id) => {
      const i = firstPart + find(id);
      let sum = 0;
      for (let k = 0; k < partFlowCount[i]; k++) sum += figures.amps[partFlow[i] + k];
      return sum;
    },
    internal: (id, name) => {
      const i = find(id);
      const value = internalOf(parts[i], numbering.unknown[firstPart + i], name, figures);
      if (value === undefined) throw new Error(`Part "${id}" has no internal unknown "${name}".`);
      return value;
    },
  };
}

/** Hidden nodes have no name and are left out. */
function nameFloating(floating: readonly number[], numbering: Numbering): readonly NodeName[] {
  if (floating.length === 0) return [];
  const found = new Set(floating);
  return numbering.names.filter((name) => found.has(numbering.indexOf.get(name) ?? -1));
}
