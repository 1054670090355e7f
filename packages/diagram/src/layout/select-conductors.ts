import type { VehicleDocument } from "@probeworthy/vehicle";
import type { End, ResolvedConductor } from "./conductor-ends";

/** Posts and ground points join circuits that have nothing else to do with each other: tracing does not cross them. */
const isHub = (kind: string | undefined) => kind === "battery" || kind === "chargingSource";

/**
 * The conductors of a system's sheet: everything reached from the system's components through splices and in-line
 * connectors, and what joins the parts drawn so far to each other and to the ground.
 */
export function selectConductors(
  document: VehicleDocument,
  conductors: readonly ResolvedConductor[],
  systemComponents: ReadonlySet<string>,
): readonly ResolvedConductor[] {
  const kinds = new Map(document.components.map((component) => [component.id, component.kind]));
  const byJoint = new Map<string, ResolvedConductor[]>();
  for (const conductor of conductors) {
    for (const end of [conductor.from, conductor.to]) {
      byJoint.set(end.joint, [...(byJoint.get(end.joint) ?? []), conductor]);
    }
  }
  const passes = (end: End) => end.kind === "splice" || end.kind === "inline";

  /** Everything joined to one conductor without crossing a terminal or ground point. */
  const branch = (start: ResolvedConductor): ReadonlySet<ResolvedConductor> => {
    const found = new Set([start]);
    for (const conductor of found) {
      for (const end of [conductor.from, conductor.to]) {
        if (passes(end)) for (const next of byJoint.get(end.joint) ?? []) found.add(next);
      }
    }
    return found;
  };

  const endsOf = (joined: Iterable<ResolvedConductor>) =>
    [...joined].flatMap(({ from, to }) => [from, to]).filter((end) => !passes(end));
  const inSystem = (end: End) => end.kind === "terminal" && systemComponents.has(end.owner);
  const branches = branchesOf(conductors, branch);
  const chosen = new Set(
    branches
      .filter((joined) => endsOf(joined).some((end) => inSystem(end) && !isHub(kinds.get(end.owner))))
      .flatMap((joined) => [...joined]),
  );
  const drawn = new Set(endsOf(chosen).map((end) => end.owner));
  const isWanted = (end: End) => end.kind === "ground" || inSystem(end) || drawn.has(end.owner);
  for (const joined of branches) {
    const kept = withoutDeadEnds(joined, isWanted);
    if (endsOf(kept).some((end) => end.kind === "terminal"))
      for (const conductor of kept) chosen.add(conductor);
  }
  return conductors.filter((conductor) => chosen.has(conductor));
}

function branchesOf(
  conductors: readonly ResolvedConductor[],
  branch: (start: ResolvedConductor) => ReadonlySet<ResolvedConductor>,
): readonly ReadonlySet<ResolvedConductor>[] {
  const seen = new Set<ResolvedConductor>();
  return conductors.flatMap((conductor) => {
    if (seen.has(conductor)) return [];
    const joined = branch(conductor);
    for (const member of joined) seen.add(member);
    return [joined];
  });
}

/** Takes conductors off a branch, from its tips inwards, until every tip is wanted. Two wanted tips or nothing remain. */
function withoutDeadEnds(
  joined: ReadonlySet<ResolvedConductor>,
  isWanted: (end: End) => boolean,
): readonly ResolvedConductor[] {
  let left = [...joined];
  for (;;) {
    const degree = new Map<string, number>();
    for (const { from, to } of left) {
      for (const { joint } of [from, to]) degree.set(joint, (degree.get(joint) ?? 0) + 1);
    }
    const isTip = (end: End) =>
      degree.get(end.joint) === 1 || end.kind === "terminal" || end.kind === "ground";
    const kept = left.filter(({ from, to }) => [from, to].every((end) => !isTip(end) || isWanted(end)));
    if (kept.length === left.length) return kept;
    left = kept;
  }
}
