import type { causeKinds, correctionActions } from "@probeworthy/evaluation";

export const causeKindTitles: Readonly<Record<(typeof causeKinds)[number], string>> = {
  open: "Open circuit",
  highResistance: "Too much resistance",
  shortToGround: "Short to ground",
  shortToSupply: "Short to supply",
  shortBetween: "Two conductors touching",
  fuseOpen: "Open fuse, nothing behind it",
  sensorFault: "Sensor faulty",
  leakage: "Leakage: damp, dirt, a load that stays on",
  relayFault: "Relay faulty",
  lampFault: "Lamp faulty",
  motorFault: "Motor or its drive faulty",
  moduleFault: "Control module faulty",
  wrongPart: "Wrong or missing part fitted",
  crossedConductors: "Conductors crossed",
  componentFault: "Other component faulty",
  battery: "Battery weak or discharged",
  workingAsDesigned: "Nothing wrong: it works as designed",
};

export const correctionTitles: Readonly<Record<(typeof correctionActions)[number], string>> = {
  repairConductor: "Repair the conductor",
  repairTerminal: "Repair or renew the terminal",
  cleanGround: "Clean and tighten the ground point",
  replaceFuse: "Fit a new fuse of the same rating",
  replaceComponent: "Replace the component",
  chargeOrReplaceBattery: "Charge and test the battery, replace it if it fails",
  removeShort: "Clear the short and protect the harness",
  explainToCustomer: "Explain to the customer, repair nothing",
};
