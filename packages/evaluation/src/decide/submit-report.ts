import { ok } from "@probeworthy/vehicle";
import type { Report } from "../command";
import { reportPlaces } from "../places";
import { type Bench, type Decision, refuse } from "./outcome";

/** Checks that the report names places of this vehicle; whether they are the right ones is for the grade. */
export function submitReport(bench: Bench, report: Report): Decision {
  const places = new Set(reportPlaces(bench.context.document).map((place) => place.id));
  const { cause, correction } = report;
  const named = [
    { path: "report.cause.place", place: cause.place, mayBeEmpty: cause.kind === "workingAsDesigned" },
    ...(report.further ?? []).map(({ place }, index) => ({
      path: `report.further[${index}].place`,
      place,
      mayBeEmpty: false,
    })),
    {
      path: "report.correction.place",
      place: correction.place,
      mayBeEmpty: correction.action === "explainToCustomer",
    },
  ];
  for (const { path, place, mayBeEmpty } of named) {
    if (place === "" && mayBeEmpty) continue;
    if (place === "") return refuse("unknown_place", "Say where: choose a place from the list.", path);
    if (!places.has(place)) return refuse("unknown_place", `The vehicle has no place ${place}.`, path);
  }
  return ok({ car: bench.car, observation: { kind: "submitted" } });
}
