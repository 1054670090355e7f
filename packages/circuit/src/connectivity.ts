import { createDisjointSets, type DisjointSets } from "./disjoint-sets";
import type { Part } from "./elements/definition";
import { definesVoltage, type Expanded, ohmsOf } from "./expansion";
import type { Numbering } from "./numbering";
import { fail, type Result, succeed } from "./result";

/** Leak to ground of every node of a floating island, siemens. */
export const islandLeak = 1e-12;
/**
 * What the matrix has in its place at one node of an island that attached elements tie, siemens, taken out again by the
 * attached elements' own share: the geometric middle between what the largest and the smallest conductances can bear.
 */
export const tiedIslandLeak = 1e-6;

/** A loop of elements that each fix a voltage has no current that could be computed, even if the volts agree. */
export function refuseVoltageLoops(
  expanded: readonly Expanded[],
  numbering: Numbering,
  timed: boolean,
): Result<void> {
  const sets = createDisjointSets(numbering.size + 1);
  for (const { element, parts, firstPart } of expanded) {
    for (const [i, part] of parts.entries()) {
      if (!definesVoltage(part) || (timed && part.kind === "inductor")) continue;
      const [a, b] = numbering.nodes[firstPart + i];
      if (sets.join(a, b)) continue;
      const message = `"${element.id}" closes a loop of ideal voltage sources and inductors; give one of them an internal resistance.`;
      return fail("voltage_loop", message, { element: element.id });
    }
  }
  return succeed(undefined);
}

/** Current sources carry what they carry, and capacitors nothing for long: they do not tie their nodes to anything. */
const drivesCurrentOnly = (part: Part): boolean =>
  part.kind === "currentSource" ||
  part.kind === "capacitor" ||
  (part.kind === "controlledSource" && (part.type === "vccs" || part.type === "cccs"));

/** A part ties its terminals unless it is a mere leak: an open switch, or 1e12 Ω and more. */
export function tiesTerminals(part: Part): boolean {
  if (drivesCurrentOnly(part)) return false;
  const ohms = ohmsOf(part);
  return ohms === undefined || ohms * islandLeak < 1;
}

export interface Islands {
  /** Nodes (unknown numbers, hidden ones too) with no path to ground. */
  readonly floating: readonly number[];
  readonly sets: DisjointSets;
}

/**
 * Which nodes the parts could tie together, as numbers: found once, since a switch that opens or a driver that is let
 * go asks for new islands at nearly every solve. Three figures a link: two nodes and the number of the part whose
 * state decides.
 */
export function listLinks(numbering: Numbering): Int32Array {
  const links: number[] = [];
  for (const [position, [first, ...others]] of numbering.nodes.entries())
    for (const other of others) links.push(first, other, position);
  return Int32Array.from(links);
}

/** `ties` says of each part whether it ties its terminals; see `tiesTerminals`. `others` are pairs tied besides. */
export function findIslands(
  links: Int32Array,
  ties: Uint8Array,
  numbering: Numbering,
  others: readonly (readonly number[])[] = [],
): Islands {
  const sets = createDisjointSets(numbering.size + 1);
  for (let at = 0; at < links.length; at += 3)
    if (ties[links[at + 2]] === 1) sets.join(links[at], links[at + 1]);
  for (const [a, b] of others) sets.join(a, b);
  const home = sets.find(numbering.ground);
  const floating: number[] = [];
  for (let node = 0; node < numbering.nodeCount; node++) if (sets.find(node) !== home) floating.push(node);
  return { floating, sets };
}

/** A current source between two separate islands has no way back; only 0 A is possible there. */
export function refuseOpenCurrentSource(
  owner: string,
  part: Part,
  rows: readonly number[],
  islands: Islands,
  numbering: Numbering,
): Result<void> {
  const [from, to] = rows.map((row) => islands.sets.find(row));
  if (part.kind !== "currentSource" || part.amps === 0 || from === to) return succeed(undefined);
  const node = to === islands.sets.find(numbering.ground) ? part.from : part.to;
  const message = `"${owner}" drives ${part.amps} A into node "${node}", from which no current can return.`;
  return fail("open_current_source", message, { element: owner, node });
}
