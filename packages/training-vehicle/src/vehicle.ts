import type { VehicleDocument } from "@probeworthy/vehicle";
import { bodyElectrics } from "./body/wiring";
import { wheelSpeed } from "./brakes/wiring";
import { blower } from "./climate/blower";
import { powerWindow } from "./comfort/window";
import { wiper } from "./comfort/wiper";
import { conditions } from "./conditions";
import { dataNetwork } from "./data-network/wiring";
import { batteryAndCharging } from "./electrical-supply/battery-and-charging";
import { fuses } from "./electrical-supply/fuses";
import { ignitionSwitch } from "./electrical-supply/ignition-switch";
import { engineElectrics } from "./engine/wiring";
import { exteriorLighting } from "./exterior-lighting/wiring";
import type { HarnessPart } from "./harness";
import { steeringAngleSensor } from "./power-steering/angle-sensor";
import { type SteeringPlacement, steeringRatings } from "./power-steering/ratings";
import { powerSteering } from "./power-steering/wiring";
import { blowerSystem } from "./service-information/blower";
import { dataNetworkSystem } from "./service-information/data-network";
import { engineTemperature } from "./service-information/engine-temperature";
import { exteriorLighting as exteriorLightingSystem } from "./service-information/exterior-lighting";
import { fuelPump } from "./service-information/fuel-pump";
import { indicatorsAndHorn } from "./service-information/indicators-and-horn";
import { pedalAndThrottle } from "./service-information/pedal-and-throttle";
import { powerSteeringSystem } from "./service-information/power-steering";
import { radiatorFan } from "./service-information/radiator-fan";
import { startingAndCharging } from "./service-information/starting-and-charging";
import { wheelSpeedSystem } from "./service-information/wheel-speed";
import { wiperAndWindowSystem } from "./service-information/wiper-and-window";
import { symptoms } from "./symptoms";

/** Choices a college makes when it takes the car: where the assist motor sits. */
export interface TrainingVehicleOptions {
  readonly steering?: SteeringPlacement;
}

/**
 * The Brambling 1.2: an invented three-door car; every pin, colour, length and limit is our own. The placement of the
 * steering motor changes its ratings, fuse and conductors; designators, pins and colours stay.
 */
export function buildTrainingVehicle({ steering = "column" }: TrainingVehicleOptions = {}): VehicleDocument {
  const ratings = steeringRatings[steering];
  const parts: readonly HarnessPart[] = [
    batteryAndCharging,
    fuses(ratings),
    ignitionSwitch,
    powerSteering(ratings),
    steeringAngleSensor,
    dataNetwork,
    bodyElectrics,
    ...exteriorLighting,
    engineElectrics,
    wheelSpeed,
    blower,
    powerWindow,
    wiper,
  ];
  return {
    format: "probeworthy-vehicle-1",
    id: steering === "column" ? "brambling-12" : `brambling-12-${steering}`,
    title: steering === "column" ? "Brambling 1.2" : `Brambling 1.2, steering motor at the ${steering}`,
    description:
      "An invented small three-door hatchback: petrol engine, manual gearbox, 12 V, electric power steering on the " +
      `${steering}. It exists only for practice. No real car has these pins, colours or limits.`,
    nominalVolts: 12,
    conditions,
    components: parts.flatMap((part) => part.components ?? []),
    connectors: parts.flatMap((part) => part.connectors ?? []),
    conductors: parts.flatMap((part) => part.conductors ?? []),
    splices: parts.flatMap((part) => part.splices ?? []),
    groundPoints: parts.flatMap((part) => part.groundPoints ?? []),
    symptoms: symptoms(ratings),
    systems: [
      powerSteeringSystem,
      startingAndCharging,
      exteriorLightingSystem,
      indicatorsAndHorn,
      radiatorFan,
      fuelPump,
      pedalAndThrottle,
      engineTemperature,
      wheelSpeedSystem,
      dataNetworkSystem,
      blowerSystem,
      wiperAndWindowSystem,
    ],
  };
}

/** The car as it comes: steering motor on the column. */
export const trainingVehicle: VehicleDocument = buildTrainingVehicle();
