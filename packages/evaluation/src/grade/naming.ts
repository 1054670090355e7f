import type { VehicleDocument } from "@probeworthy/vehicle";
import type { Report } from "../command";
import type { AttemptContext } from "../context";
import { kindsOf, namedGroup, nothingWrong, repairPlace } from "./repair-group";

export interface Naming {
  readonly share: number;
  readonly text: string;
}

const right = 1;
const rightPlace = 0.7;
const nearby = 0.4;

/** How near the named cause is: right place and kind, right place only, next to it on the same conductor, or wrong. */
export function judgeNaming({ document, variant }: AttemptContext, report: Report): Naming {
  const places = variant.normal ? [] : variant.faults.map((fault) => repairPlace(fault, document));
  const truths = places.filter((place) => place !== null);
  const named = namedGroup(report);
  if (truths.length === 0) {
    return named === nothingWrong
      ? { share: right, text: "Named rightly: it works as designed." }
      : { share: 0, text: "Nothing is wrong with the car, but a fault was named." };
  }
  if (named === nothingWrong) return { share: 0, text: "There is a fault, but none was named." };
  // Two conductors rubbed together: either may be named.
  const hit = variant.faults.filter(
    (fault) =>
      repairPlace(fault, document) === named ||
      (fault.kind === "shortBetween" && repairPlace({ ...fault, at: fault.other }, document) === named),
  );
  if (hit.length > 0) {
    const kind = hit.some((fault) => kindsOf(fault).includes(report.cause.kind));
    // Of several faults, one found is that part of the job.
    const part = new Set(truths).size;
    const share = (kind ? right : rightPlace) / part;
    if (part > 1) return { share, text: `One of ${part} causes is named.` };
    return kind
      ? { share, text: "The cause is named: place and kind." }
      : { share, text: "The place is right, the kind of fault is not." };
  }
  const near = truths.some((place) => neighbours(document, place).has(named));
  return near
    ? { share: nearby, text: "The right path, but the place beside the cause." }
    : { share: 0, text: "The cause is not the one named." };
}

/** Places next to a place: a conductor and its terminals, connectors, splices, grounds and the parts it ends at. */
export function neighbours(document: VehicleDocument, place: string): ReadonlySet<string> {
  const near = new Set<string>();
  for (const wire of document.conductors) {
    const ends = [wire.from, wire.to].flatMap((end) => endPlaces(document, end));
    if (wire.id !== place && !ends.includes(place)) continue;
    near.add(wire.id);
    for (const end of ends) near.add(end);
  }
  near.delete(place);
  return near;
}

/** `X7.2/b` → the cavity, the connector, and the part behind that cavity. */
function endPlaces(document: VehicleDocument, end: string): string[] {
  const bare = end.replace("/b", "");
  if (bare.includes(":")) return [bare.split(":")[0] ?? bare];
  const [id = bare, cavity] = bare.split(".");
  if (cavity === undefined) return [bare];
  const connector = document.connectors.find((candidate) => candidate.id === id);
  return [bare, id, ...(connector?.component === undefined ? [] : [connector.component])];
}
