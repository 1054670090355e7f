import type { VehicleDocument } from "@probeworthy/vehicle";
import { bodyElectrics } from "./body/wiring";
import { conditions } from "./conditions";
import { dataNetwork } from "./data-network/wiring";
import { batteryAndCharging } from "./electrical-supply/battery-and-charging";
import { fuses } from "./electrical-supply/fuses";
import { ignitionSwitch } from "./electrical-supply/ignition-switch";
import { exteriorLighting } from "./exterior-lighting/wiring";
import type { HarnessPart } from "./harness";
import { steeringAngleSensor } from "./power-steering/angle-sensor";
import { powerSteering } from "./power-steering/wiring";
import { exteriorLighting as exteriorLightingSystem } from "./service-information/exterior-lighting";
import { indicatorsAndHorn } from "./service-information/indicators-and-horn";
import { powerSteeringSystem } from "./service-information/power-steering";
import { startingAndCharging } from "./service-information/starting-and-charging";
import { symptoms } from "./symptoms";

const parts: readonly HarnessPart[] = [
  batteryAndCharging,
  fuses,
  ignitionSwitch,
  powerSteering,
  steeringAngleSensor,
  dataNetwork,
  bodyElectrics,
  ...exteriorLighting,
];

/** The Brambling 1.2: an invented three-door car; every pin, colour, length and limit is our own. */
export const trainingVehicle: VehicleDocument = {
  format: "probeworthy-vehicle-1",
  id: "brambling-12",
  title: "Brambling 1.2",
  description:
    "An invented small three-door hatchback: petrol engine, manual gearbox, 12 V, electric power steering on the " +
    "column. It exists only for practice. No real car has these pins, colours or limits.",
  nominalVolts: 12,
  conditions,
  components: parts.flatMap((part) => part.components ?? []),
  connectors: parts.flatMap((part) => part.connectors ?? []),
  conductors: parts.flatMap((part) => part.conductors ?? []),
  splices: parts.flatMap((part) => part.splices ?? []),
  groundPoints: parts.flatMap((part) => part.groundPoints ?? []),
  symptoms,
  systems: [powerSteeringSystem, startingAndCharging, exteriorLightingSystem, indicatorsAndHorn],
};
