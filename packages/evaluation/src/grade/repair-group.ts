import type { Fault, VehicleDocument } from "@probeworthy/vehicle";
import type { causeKinds, Report } from "../command";
import { reportPlaces } from "../places";

export type CauseKind = (typeof causeKinds)[number];

/** Id of the group of causes that need no repair at all: nothing is wrong, or what happens is meant to happen. */
export const nothingWrong = "none";

/** The place a mechanic would put right; causes with the same place are one group, whatever their severity. */
export function repairPlace(fault: Fault, document: VehicleDocument): string | null {
  switch (fault.kind) {
    case "motorHot":
      return null;
    case "fuseBlown":
    case "sensorOffset":
    case "sensorStuck":
    case "internalOpen":
    case "weakBattery":
      return fault.component;
    default:
      return placeOf(fault.at, document);
  }
}

/** From a test point or a fault's place to what a report can name: `X2.5:h` → its conductor, `A1:T1` → `A1`. */
function placeOf(at: string, document: VehicleDocument): string {
  const [owner = at, side] = at.split(":");
  if (side === undefined) return at;
  const wire = document.conductors.find((conductor) => {
    const end = side === "b" ? `${owner}/b` : side === "h" ? owner : side === "ring" ? owner : at;
    return conductor.from === end || conductor.to === end;
  });
  if (owner.includes(".") || side === "ring") return wire?.id ?? owner;
  return owner;
}

/** Group of a set of faults: their places joined, or `none`. */
export function groupOf(faults: readonly Fault[], normal: boolean, document: VehicleDocument): string {
  if (normal) return nothingWrong;
  const places = faults.flatMap((fault) => repairPlace(fault, document) ?? []);
  return places.length === 0 ? nothingWrong : [...new Set(places)].sort().join("+");
}

/** In plain words, as the report form lists the places. */
export function groupTitle(group: string, document: VehicleDocument): string {
  if (group === nothingWrong) return "Nothing is wrong: it works as designed";
  const titles = new Map(reportPlaces(document).map(({ id, title }) => [id, title]));
  return group
    .split("+")
    .map((place) => titles.get(place) ?? place)
    .join(" and ");
}

/** The group a report names. */
export const namedGroup = (report: Report): string =>
  report.cause.kind === "workingAsDesigned" ? nothingWrong : report.cause.place;

/** Kinds of cause that name this fault correctly; the first is the best word for it. */
export function kindsOf(fault: Fault): readonly CauseKind[] {
  switch (fault.kind) {
    case "open":
      return ["open"];
    case "seriesResistance":
      return ["highResistance"];
    case "shortToGround":
    case "shortToSupply":
    case "shortBetween":
      return [fault.kind];
    case "fuseBlown":
      return ["fuseOpen", "open"];
    case "sensorOffset":
    case "sensorStuck":
      return ["sensorFault", "componentFault"];
    case "internalOpen":
      return ["componentFault", "open", "sensorFault"];
    case "motorHot":
      return ["workingAsDesigned"];
    case "weakBattery":
      return ["battery", "componentFault"];
  }
}

const correctionByKind: Readonly<Record<Fault["kind"], string>> = {
  open: "Repair it and test it under load",
  seriesResistance: "Clean or renew it and test it under load",
  shortToGround: "Repair the insulation, fit the fuse it took, route it clear",
  shortToSupply: "Repair the insulation and route it clear",
  shortBetween: "Repair the insulation and route it clear",
  fuseBlown: "Fit a fuse of the same rating",
  sensorOffset: "Replace the sensor",
  sensorStuck: "Replace the sensor",
  internalOpen: "Replace the part",
  motorHot: "Explain to the customer: it protects itself and recovers",
  weakBattery: "Charge and test the battery, replace it if it does not hold",
};

/** What was wrong and what puts it right, for the result page after the report is in. */
export function truthOf(
  faults: readonly Fault[],
  normal: boolean,
  document: VehicleDocument,
): { title: string; correction: string }[] {
  if (normal || faults.length === 0) {
    return [{ title: groupTitle(nothingWrong, document), correction: "Explain it to the customer" }];
  }
  return faults.map((fault) => ({
    title: `${groupTitle(repairPlace(fault, document) ?? nothingWrong, document)}: ${wording[fault.kind]}`,
    correction: correctionByKind[fault.kind],
  }));
}

const wording: Readonly<Record<Fault["kind"], string>> = {
  open: "open",
  seriesResistance: "high resistance",
  shortToGround: "short to ground",
  shortToSupply: "short to supply",
  shortBetween: "short to another conductor",
  fuseBlown: "fuse open",
  sensorOffset: "sensor reads wrong",
  sensorStuck: "sensor output stuck",
  internalOpen: "open inside",
  motorHot: "hot, protecting itself",
  weakBattery: "weak",
};
