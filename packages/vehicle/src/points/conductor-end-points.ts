import { endToPoint, type VehicleIndex } from "../document/vehicle-index";

/** Every point a conductor ends at, once, in document order: where its insulation could chafe through. */
export function conductorEndPoints(index: VehicleIndex): string[] {
  const points = new Set<string>();
  for (const conductor of index.conductors.values())
    for (const end of [conductor.from, conductor.to]) points.add(endToPoint(end, index.groundPoints));
  return [...points];
}
