import type { ComponentOf } from "@probeworthy/vehicle";
import { condition, lookUp } from "../expressions";

export const starterRelay: ComponentOf<"relay"> = {
  kind: "relay",
  id: "K1",
  title: "Starter relay",
  place: "fuse box in the engine bay, left",
  zone: "engineBayLeft",
  contact: "make",
  coilOhms: 85,
  pullInVolts: 7,
  dropOutVolts: 2.5,
  contactOhms: 0.004,
  suppressor: "resistor",
};

/** Pulls the pinion in and closes the heavy contact 30 to 45. Coil: hold winding and pull-in winding taken together. */
export const starterSolenoid: ComponentOf<"relay"> = {
  kind: "relay",
  id: "K2",
  title: "Starter solenoid",
  place: "on the starter motor",
  zone: "engine",
  contact: "make",
  coilOhms: 0.9,
  pullInVolts: 6.5,
  dropOutVolts: 3,
  contactOhms: 0.0006,
  terminals: { coilPlus: "50", coilMinus: "31", common: "30", make: "45" },
};

/** What the engine asks of the starter shaft, N·m: a cold engine's oil holds back. */
const engineTorque = lookUp(condition("coolantTemperature"), [
  [-20, 2.4],
  [20, 1.25],
  [88, 0.95],
]);

/** Starter speed for one turn of the crankshaft: planetary gear and ring gear together. */
export const starterRatio = 31;

export const starterMotor: ComponentOf<"motor"> = {
  kind: "motor",
  id: "M2",
  title: "Starter motor 1.1 kW",
  place: "rear of the engine",
  zone: "engine",
  windingOhmsAt20: 0.021,
  torquePerAmp: 0.011,
  turning: { frictionTorque: 0.2, loadTorque: engineTorque, loadPerSpeed: 0.0009 },
  heat: {
    windingToHousing: 0.09,
    housingToAmbient: 0.7,
    windingCapacity: 900,
    housingCapacity: 2600,
    ambientCondition: "ambientTemperature",
  },
};
