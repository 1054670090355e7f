import type { VehicleDocument } from "@probeworthy/vehicle";
import type { End, ResolvedConductor } from "./conductor-ends";

/** Posts and ground points join circuits that have nothing else to do with each other: tracing does not cross them. */
const isHub = (kind: string | undefined) => kind === "battery" || kind === "chargingSource";

/**
 * The conductors of a system's sheet: everything reached from the system's components through splices and in-line
 * connectors. From battery and generator posts only what runs between the system's own components and the ground.
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

  const chosen = new Set<ResolvedConductor>();
  for (const conductor of conductors) {
    if (chosen.has(conductor)) continue;
    const joined = branch(conductor);
    const ends = [...joined].flatMap(({ from, to }) => [from, to]).filter((end) => !passes(end));
    const inSystem = (end: End) => end.kind === "terminal" && systemComponents.has(end.owner);
    const isReached = ends.some((end) => inSystem(end) && !isHub(kinds.get(end.owner)));
    const isBetweenHubs = ends.some(inSystem) && ends.every((end) => end.kind === "ground" || inSystem(end));
    if (isReached || isBetweenHubs) for (const member of joined) chosen.add(member);
  }
  return conductors.filter((conductor) => chosen.has(conductor));
}
