import type { VehicleDocument } from "@probeworthy/vehicle";
import type { End, ResolvedConductor } from "./conductor-ends";

/** Everything joined through splices and in-line connectors; it stops at terminals, ground points and bars. */
export type Branch = readonly ResolvedConductor[];

/** True where a branch goes on. */
export const passes = (end: End, bars: ReadonlySet<string>) =>
  end.kind === "inline" || (end.kind === "splice" && !bars.has(end.joint));

/** Splices that feed two or more fuses directly: the bars of the fuse boxes. */
export function findBars(document: VehicleDocument): ReadonlySet<string> {
  const fuses = new Set(document.components.filter(({ kind }) => kind === "fuse").map(({ id }) => id));
  const fed = new Map<string, Set<string>>(document.splices.map(({ id }) => [id, new Set()]));
  for (const { from, to } of document.conductors) {
    for (const [bar, other] of [
      [from, to],
      [to, from],
    ] as const) {
      const fuse = other.split(":")[0] ?? "";
      if (fuses.has(fuse)) fed.get(bar)?.add(fuse);
    }
  }
  return new Set([...fed].filter(([, found]) => found.size > 1).map(([bar]) => bar));
}

/** Every branch of the conductors given. */
export function branchesOf(
  conductors: readonly ResolvedConductor[],
  bars: ReadonlySet<string>,
): readonly Branch[] {
  const byJoint = new Map<string, ResolvedConductor[]>();
  for (const conductor of conductors) {
    for (const end of [conductor.from, conductor.to]) {
      if (passes(end, bars)) byJoint.set(end.joint, [...(byJoint.get(end.joint) ?? []), conductor]);
    }
  }
  const seen = new Set<ResolvedConductor>();
  return conductors.flatMap((start) => {
    if (seen.has(start)) return [];
    const found = new Set([start]);
    for (const conductor of found) {
      for (const end of [conductor.from, conductor.to]) {
        for (const next of byJoint.get(end.joint) ?? []) found.add(next);
      }
    }
    for (const conductor of found) seen.add(conductor);
    return [[...found]];
  });
}

/** Takes conductors off a branch, from its tips inwards, until every tip is wanted. */
export function withoutDeadEnds(
  joined: Branch,
  isWanted: (end: End) => boolean,
  bars: ReadonlySet<string>,
): Branch {
  let left = joined;
  for (;;) {
    const degree = new Map<string, number>();
    for (const { from, to } of left) {
      for (const { joint } of [from, to]) degree.set(joint, (degree.get(joint) ?? 0) + 1);
    }
    const isTip = (end: End) => degree.get(end.joint) === 1 || !passes(end, bars);
    const kept = left.filter(({ from, to }) => [from, to].every((end) => !isTip(end) || isWanted(end)));
    if (kept.length === left.length) return kept;
    left = kept;
  }
}
