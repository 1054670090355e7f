import type { VehicleDocument } from "@probeworthy/vehicle";
import { type End, resolveEnd } from "./layout/conductor-ends";

/** Everything on one electrically continuous path of copper: no component, fuse or switch in between. */
export interface ConductorTrace {
  /** In order along the path from one end; a branch follows where it leaves. */
  readonly conductors: readonly string[];
  /** Point ids of every cavity face the path passes or ends at, in the same order. */
  readonly cavities: readonly string[];
  readonly splices: readonly string[];
  /** Where the path ends: `A1:T1` for a terminal, `XE1` for a ground point. */
  readonly ends: readonly string[];
}

interface Piece {
  readonly id: string;
  readonly ends: readonly [End, End];
}

const passes = (end: End) => end.kind === "inline" || end.kind === "splice";

/**
 * Follows a conductor both ways through mated connectors and splices to the components, fuses, switches and ground
 * points its path ends at. Undefined when the document has no such conductor or it ends at nothing.
 */
export function traceConductor(document: VehicleDocument, id: string): ConductorTrace | undefined {
  const pieces = document.conductors.flatMap((conductor): Piece[] => {
    const from = resolveEnd(document, conductor.from);
    const to = resolveEnd(document, conductor.to);
    return from === undefined || to === undefined ? [] : [{ id: conductor.id, ends: [from, to] }];
  });
  const start = pieces.find((piece) => piece.id === id);
  if (start === undefined) return undefined;
  const at = new Map<string, Piece[]>();
  for (const piece of pieces) {
    for (const end of piece.ends) if (passes(end)) at.set(end.joint, [...(at.get(end.joint) ?? []), piece]);
  }
  const whole = new Set([start]);
  for (const piece of whole)
    for (const end of piece.ends) for (const next of at.get(end.joint) ?? []) whole.add(next);
  const found = {
    conductors: [] as string[],
    cavities: new Set<string>(),
    splices: new Set<string>(),
    ends: new Set<string>(),
  };
  const seen = new Set<Piece>();
  const note = (end: End) => {
    if (end.connector !== undefined) {
      found.cavities.add(
        `${end.connector}.${end.cavity ?? ""}:${end.kind === "inline" ? (end.face ?? "h") : "h"}`,
      );
      if (end.kind === "terminal" && end.terminal !== undefined)
        found.cavities.add(`${end.connector}.${end.cavity ?? ""}:c`);
    }
    if (end.kind === "splice") found.splices.add(end.joint);
    if (!passes(end)) found.ends.add(end.joint);
  };
  const walk = (piece: Piece, entry: End): void => {
    if (seen.has(piece)) return;
    seen.add(piece);
    note(entry);
    found.conductors.push(piece.id);
    const exit = piece.ends[0] === entry ? piece.ends[1] : piece.ends[0];
    note(exit);
    if (!passes(exit)) return;
    for (const next of at.get(exit.joint) ?? []) {
      const inward = next.ends.find((end) => end.joint === exit.joint);
      if (inward !== undefined) walk(next, inward);
    }
  };
  // From the first end in the document; whatever a ring or a free end left out follows.
  for (const piece of pieces) {
    if (!whole.has(piece)) continue;
    const tip = piece.ends.find((end) => !passes(end));
    if (tip !== undefined) walk(piece, tip);
  }
  for (const piece of whole) walk(piece, piece.ends[0]);
  return {
    conductors: found.conductors,
    cavities: [...found.cavities],
    splices: [...found.splices],
    ends: [...found.ends],
  };
}
