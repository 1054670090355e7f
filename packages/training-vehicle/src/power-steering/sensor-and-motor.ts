import type { ComponentOf } from "@probeworthy/vehicle";
import { condition } from "../expressions";
import { maximumTwist, spanPerDegree, torsionBarStiffness } from "./figures";
import type { SteeringRatings } from "./ratings";

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

export const assistMotor = (ratings: SteeringRatings): ComponentOf<"motor"> => ({
  kind: "motor",
  id: "M1",
  title: "Assist motor",
  place: ratings.motorPlace,
  zone: ratings.zone,
  windingOhmsAt20: ratings.windingOhmsAt20,
  torquePerAmp: ratings.torquePerAmp,
  gear: ratings.gear,
  heat: { ...ratings.heat, ambientCondition: "ambientTemperature" },
});
