import type { Fault, VehicleDocument } from "@probeworthy/vehicle";
import type { Report, ReportedCause } from "../command";
import type { AttemptContext } from "../context";
import { claimsOf, kindsOf, repairPlace } from "./repair-group";

export interface Naming {
  readonly share: number;
  readonly text: string;
}

const right = 1;
const rightPlace = 0.7;
const nearby = 0.4;

/**
 * How near the named causes are: of each fault's repair the best claim counts (right place and kind, right place only,
 * next to it on the same conductor, or none), and the faults of a car count the same. A claim that comes near no fault
 * takes its part away, so that naming many places does not pay.
 */
export function judgeNaming({ document, variant }: AttemptContext, report: Report): Naming {
  const faults = variant.normal ? [] : variant.faults;
  const truths = [...new Set(faults.flatMap((fault) => repairPlace(fault, document) ?? []))];
  // A place named twice with different kinds is one claim, the first: trying out every kind does not pay.
  const claims = claimsOf(report).filter(
    ({ place }, index, all) => all.findIndex((other) => other.place === place) === index,
  );
  if (truths.length === 0) {
    return claims.length === 0
      ? { share: right, text: "Named rightly: it works as designed." }
      : { share: 0, text: "Nothing is wrong with the car, but a fault was named." };
  }
  if (claims.length === 0) return { share: 0, text: "There is a fault, but none was named." };
  const found = truths.map((place) =>
    Math.max(
      ...claims.map((claim) =>
        nearness(
          document,
          faults.filter((fault) => repairPlace(fault, document) === place),
          claim,
        ),
      ),
    ),
  );
  const astray = claims.filter((claim) => nearness(document, faults, claim) === 0).length;
  const sum = found.reduce((total, share) => total + share, 0);
  return { share: sum / (truths.length + astray), text: namingText(found, astray) };
}

function namingText(found: readonly number[], astray: number): string {
  const places = found.filter((share) => share >= rightPlace).length;
  const others =
    astray === 0 || places === 0
      ? ""
      : ` ${astray} further named ${astray === 1 ? "place is" : "places are"} not at fault.`;
  if (found.length > 1 && places > 0) {
    return places === found.length
      ? `All ${places} causes are named.${others}`
      : `${places === 1 ? "One" : places} of ${found.length} causes ${places === 1 ? "is" : "are"} named: another fault lay behind.${others}`;
  }
  const best = Math.max(...found);
  if (best === right) return `The cause is named: place and kind.${others}`;
  if (best === rightPlace) return `The place is right, the kind of fault is not.${others}`;
  return best === nearby
    ? "The right path, but the place beside the cause."
    : "The cause is not the one named.";
}

function nearness(document: VehicleDocument, faults: readonly Fault[], claim: ReportedCause): number {
  // Two conductors rubbed together: either may be named.
  const hit = faults.filter(
    (fault) =>
      repairPlace(fault, document) === claim.place ||
      (fault.kind === "shortBetween" && repairPlace({ ...fault, at: fault.other }, document) === claim.place),
  );
  if (hit.length > 0) return hit.some((fault) => kindsOf(fault).includes(claim.kind)) ? right : rightPlace;
  const places = faults.flatMap((fault) => repairPlace(fault, document) ?? []);
  return places.some((place) => neighbours(document, place).has(claim.place)) ? nearby : 0;
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
