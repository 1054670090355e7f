import { ohmsOf } from "./bindings";
import { createDisjointSets, type DisjointSets } from "./disjoint-sets";
import type { CircuitElement } from "./network";
import { definesVoltage, type Numbering } from "./numbering";
import { fail, type Result, succeed } from "./result";
import { terminalsOf } from "./validate-element";

/** Leak to ground of every node of a floating island, siemens. */
export const islandLeak = 1e-12;

function indexOf(numbering: Numbering, name: string): number {
  const index = numbering.indexOf.get(name);
  if (index === undefined) throw new Error(`Node "${name}" was not numbered.`);
  return index;
}

/** A loop of elements that each fix a voltage has no current that could be computed, even if the volts agree. */
export function refuseVoltageLoops(elements: Iterable<CircuitElement>, numbering: Numbering): Result<void> {
  const sets = createDisjointSets(numbering.size + 1);
  for (const element of elements) {
    if (!definesVoltage(element)) continue;
    const [a, b] = terminalsOf(element).map((name) => indexOf(numbering, name));
    if (!sets.join(a, b)) {
      const message = `"${element.id}" closes a loop of ideal voltage sources; give one of them an internal resistance.`;
      return fail("voltage_loop", message, { element: element.id });
    }
  }
  return succeed(undefined);
}

/** Current sources carry what they carry: they do not tie their nodes to anything. */
const drivesCurrentOnly = (element: CircuitElement): boolean =>
  element.kind === "currentSource" ||
  (element.kind === "controlledSource" && (element.type === "vccs" || element.type === "cccs"));

/** An element ties its terminals unless it is a mere leak: an open switch, or 1e12 Ω and more. */
export function tiesTerminals(element: CircuitElement): boolean {
  if (drivesCurrentOnly(element)) return false;
  const ohms = ohmsOf(element);
  return ohms === undefined || ohms * islandLeak < 1;
}

export interface Islands {
  /** Nodes (unknown numbers, hidden ones too) with no path to ground. */
  readonly floating: readonly number[];
  readonly sets: DisjointSets;
}

/**
 * Which nodes the elements could tie together, as numbers: found once, since a switch that opens or a driver that is let
 * go asks for new islands at nearly every solve. Three figures a link: two nodes and the position of the element whose
 * state decides, −1 where it always holds.
 */
export function listLinks(elements: readonly CircuitElement[], numbering: Numbering): Int32Array {
  const links: number[] = [];
  for (const [position, element] of elements.entries()) {
    const [first, ...others] = terminalsOf(element).map((name) => indexOf(numbering, name));
    const junction = numbering.junctionNode.get(element.id);
    if (junction !== undefined) links.push(junction, first, -1);
    for (const other of others) links.push(first, other, position);
  }
  return Int32Array.from(links);
}

/** `ties` says of each element by position whether it ties its terminals; see `tiesTerminals`. */
export function findIslands(links: Int32Array, ties: Uint8Array, numbering: Numbering): Islands {
  const sets = createDisjointSets(numbering.size + 1);
  for (let at = 0; at < links.length; at += 3) {
    const position = links[at + 2];
    if (position < 0 || ties[position] === 1) sets.join(links[at], links[at + 1]);
  }
  const home = sets.find(numbering.ground);
  const floating: number[] = [];
  for (let node = 0; node < numbering.nodeCount; node++) if (sets.find(node) !== home) floating.push(node);
  return { floating, sets };
}

/** A current source between two separate islands has no way back; only 0 A is possible there. */
export function refuseOpenCurrentSources(
  elements: Iterable<CircuitElement>,
  numbering: Numbering,
  islands: Islands,
): Result<void> {
  for (const element of elements) {
    if (element.kind !== "currentSource" || element.amps === 0) continue;
    const from = indexOf(numbering, element.from);
    const to = indexOf(numbering, element.to);
    if (islands.sets.find(from) === islands.sets.find(to)) continue;
    const home = islands.sets.find(numbering.ground);
    const node = islands.sets.find(to) === home ? element.from : element.to;
    const message = `"${element.id}" drives ${element.amps} A into node "${node}", from which no current can return.`;
    return fail("open_current_source", message, { element: element.id, node });
  }
  return succeed(undefined);
}
