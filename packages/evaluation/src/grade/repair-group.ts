import { type Fault, type FaultFamily, faultTable, type VehicleDocument } from "@probeworthy/vehicle";
import type { causeKinds, Report } from "../command";
import { reportPlaces } from "../places";

export type CauseKind = (typeof causeKinds)[number];

/** Id of the group of causes that need no repair at all: nothing is wrong, or what happens is meant to happen. */
export const nothingWrong = "none";

/** The place a mechanic would put right; causes with the same place are one group, whatever their severity. */
export function repairPlace(fault: Fault, document: VehicleDocument): string | null {
  if (fault.kind === "motorHot") return null;
  if ("component" in fault) return fault.component;
  if ("connector" in fault) return fault.connector;
  if ("conductor" in fault) return fault.conductor;
  return placeOf(fault.at, document);
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

/** Every cause a report claims; empty when it says that nothing is wrong. */
export const claimsOf = (report: Report): readonly Report["cause"][] =>
  [report.cause, ...(report.further ?? [])].filter(({ kind }) => kind !== "workingAsDesigned");

/** The group a report names: its places joined as in {@link groupOf}, or `none`. */
export function namedGroup(report: Report): string {
  const places = claimsOf(report).map(({ place }) => place);
  return places.length === 0 ? nothingWrong : [...new Set(places)].sort().join("+");
}

/** What a family of faults is called in a report when no word fits better. */
const familyCauses: Readonly<Record<FaultFamily, CauseKind>> = {
  harness: "open",
  connector: "highResistance",
  fuse: "wrongPart",
  relay: "relayFault",
  lamp: "lampFault",
  sensor: "sensorFault",
  motor: "motorFault",
  supply: "componentFault",
  part: "componentFault",
  module: "moduleFault",
  bus: "moduleFault",
};

const causes: Partial<Readonly<Record<Fault["kind"], readonly CauseKind[]>>> = {
  open: ["open"],
  backedOut: ["open", "highResistance"],
  seriesResistance: ["highResistance"],
  intermittent: ["highResistance", "open"],
  shortToGround: ["shortToGround"],
  shortToSupply: ["shortToSupply"],
  shortBetween: ["shortBetween"],
  chafed: ["shortToGround", "leakage"],
  leak: ["leakage", "shortBetween"],
  wetConnector: ["leakage", "shortBetween"],
  accessory: ["leakage", "wrongPart"],
  crossedCavities: ["crossedConductors"],
  fuseBlown: ["fuseOpen", "open"],
  fuseMissing: ["wrongPart", "fuseOpen", "open"],
  lampOpen: ["lampFault", "open"],
  wrongBulb: ["wrongPart", "lampFault"],
  internalOpen: ["componentFault", "open", "sensorFault"],
  internalShort: ["componentFault", "sensorFault", "shortToGround", "shortBetween"],
  motorHot: ["workingAsDesigned"],
  weakBattery: ["battery"],
  staysAwake: ["moduleFault", "leakage"],
  terminatorExtra: ["wrongPart", "shortBetween"],
};

/** Kinds of cause that name this fault correctly; the first is the best word for it. */
export function kindsOf(fault: Fault): readonly CauseKind[] {
  const own = causes[fault.kind] ?? [familyCauses[faultTable[fault.kind].family]];
  return "component" in fault && !own.includes("componentFault") && fault.kind !== "motorHot"
    ? [...own, "componentFault"]
    : own;
}

const familyCorrections: Readonly<Record<FaultFamily, string>> = {
  harness: "Repair it and test it under load",
  connector: "Renew the terminals and test under load",
  fuse: "Fit a fuse of the right rating",
  relay: "Replace the relay",
  lamp: "Fit a lamp of the right type",
  sensor: "Replace the sensor",
  motor: "Replace the motor",
  supply: "Repair or replace it and test the charging",
  part: "Replace the part",
  module: "Replace the module",
  bus: "Repair it and test the bus",
};

const insulation = "Repair the insulation and route it clear";
const corrections: Partial<Readonly<Record<Fault["kind"], string>>> = {
  seriesResistance: "Clean or renew it and test it under load",
  intermittent: "Renew it and move the harness while you test it under load",
  shortToGround: "Repair the insulation, fit the fuse it took, route it clear",
  shortToSupply: insulation,
  shortBetween: insulation,
  chafed: insulation,
  leak: "Dry and clean it, renew what is damp",
  wetConnector: "Dry it, find where the water comes from, renew seal and terminals",
  crossedCavities: "Put both conductors into their own cavity",
  accessory: "Take it out or wire it rightly, and explain it to the customer",
  fuseBlown: "Fit a fuse of the same rating",
  couplingBroken: "Replace the drive with its coupling",
  motorHot: "Explain to the customer: it protects itself and recovers",
  weakBattery: "Charge and test the battery, replace it if it does not hold",
  terminatorExtra: "Take the further resistor out",
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
    title: `${groupTitle(repairPlace(fault, document) ?? nothingWrong, document)}: ${faultTable[fault.kind].title.toLowerCase()}`,
    correction: corrections[fault.kind] ?? familyCorrections[faultTable[fault.kind].family],
  }));
}
