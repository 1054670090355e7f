import type { ElementDefinition, Part } from "./elements/definition";
import { definitionOf } from "./elements/registry";
import type { CircuitElement, NodeName } from "./network";

/** An element together with what it is made of. */
export interface Expanded {
  element: CircuitElement;
  readonly definition: ElementDefinition<CircuitElement>;
  /** As the element was prepared; later ones have the same ids and nodes in the same order. */
  readonly parts: readonly Part[];
  /** Number of its first part among those of the whole network. */
  readonly firstPart: number;
  readonly isGuarded: boolean;
  /** True for an element that is its own only part: changing it needs no look at its definition. */
  readonly isItself: boolean;
}

/** Takes elements apart. `timed` for a transient. */
export function expand(elements: readonly CircuitElement[], timed: boolean): readonly Expanded[] {
  let firstPart = 0;
  return elements.map((element) => {
    const definition = definitionOf(element);
    const parts = definition.parts(element, definition.initialState?.(element) ?? 0, timed);
    const isItself = parts.length === 1 && parts[0] === element;
    const isGuarded = definition.guards !== undefined;
    const expanded = { element, definition, parts, firstPart, isGuarded, isItself };
    firstPart += parts.length;
    return expanded;
  });
}

/** The nodes that a part's current flows through. */
export function nodesOf(part: Part): readonly NodeName[] {
  switch (part.kind) {
    case "resistor":
    case "switch":
    case "filament":
    case "capacitor":
    case "inductor":
    case "curve":
      return [part.a, part.b];
    case "voltageSource":
    case "controlledSource":
      return [part.positive, part.negative];
    case "currentSource":
      return [part.from, part.to];
    case "diode":
      return [part.anode, part.cathode];
    case "regulator":
      return [part.input, part.output, part.reference];
    case "device":
      return part.nodes;
  }
}

/** Nodes that an element only listens to. */
export function controlNodesOf(element: CircuitElement): readonly NodeName[] {
  if (element.kind !== "controlledSource") return [];
  return [element.controlPositive, element.controlNegative].filter((name) => name !== undefined);
}

/** Ohms of anything that obeys Ohm's law around an EMF; undefined otherwise. */
export function ohmsOf(part: Part): number | undefined {
  if (part.kind === "resistor" || part.kind === "voltageSource") return part.ohms;
  if (part.kind !== "switch") return undefined;
  return part.closed ? (part.closedOhms ?? 1e-3) : (part.openOhms ?? 1e12);
}

/** True for a part that fixes a voltage whatever current flows, as far as there is no time. */
export function definesVoltage(part: Part): boolean {
  if (part.kind === "voltageSource") return part.ohms === undefined;
  if (part.kind === "inductor") return true;
  return part.kind === "controlledSource" && (part.type === "vcvs" || part.type === "ccvs");
}
