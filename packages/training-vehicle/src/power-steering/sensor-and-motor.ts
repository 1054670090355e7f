import type { ComponentOf } from "@probeworthy/vehicle";
import { condition } from "../expressions";
import { maximumTwist, spanPerDegree, torsionBarStiffness, windingOhmsAt20 } from "./figures";

export const torqueSensor: ComponentOf<"torqueSensor"> = {
  kind: "torqueSensor",
  id: "B1",
  title: "Torque sensor",
  place: "on the torsion bar, lower end of the column",
  zone: "column",
  terminals: { supply: "5V", ground: "0V", signal1: "S1", signal2: "S2" },
  effort: condition("steeringEffort"),
  stiffness: torsionBarStiffness,
  maximumTwist,
  spanPerDegree,
  trackOhms: 4700,
  outputOhms: 680,
  supplyAmps: 0.012,
};

export const assistMotor: ComponentOf<"motor"> = {
  kind: "motor",
  id: "M1",
  title: "Assist motor",
  place: "on the steering column gearbox",
  zone: "column",
  windingOhmsAt20,
  torquePerAmp: 0.043,
  // Winding: a good half minute; housing: several minutes. Holding full lock heats it past its limit within a few minutes.
  heat: {
    windingToHousing: 0.22,
    housingToAmbient: 0.5,
    windingCapacity: 150,
    housingCapacity: 1200,
    ambientCondition: "ambientTemperature",
  },
};
