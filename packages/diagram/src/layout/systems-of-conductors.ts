import type { VehicleDocument } from "@probeworthy/vehicle";
import { type ResolvedConductor, resolveEnd } from "./conductor-ends";
import { selectConductors } from "./select-conductors";

/** The systems whose sheet shows each conductor, in document order. Conductors that end nowhere are left out. No layout is made. */
export function systemsOfConductors(document: VehicleDocument): ReadonlyMap<string, readonly string[]> {
  const resolved = document.conductors.flatMap(({ id, from, to }): ResolvedConductor[] => {
    const ends = [resolveEnd(document, from), resolveEnd(document, to)];
    const [first, second] = ends;
    return first === undefined || second === undefined ? [] : [{ id, from: first, to: second }];
  });
  const found = new Map<string, string[]>(resolved.map(({ id }) => [id, []]));
  for (const system of document.systems) {
    for (const { id } of selectConductors(document, resolved, system.id).conductors)
      found.get(id)?.push(system.id);
  }
  return found;
}
