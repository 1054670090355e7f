import type { Expression, VehicleDocument } from "@probeworthy/vehicle";
import { wheelSpeedSymptoms } from "./brakes/symptoms";
import { blowerSymptoms } from "./climate/symptoms";
import { comfortSymptoms } from "./comfort/symptoms";
import { startingSymptoms } from "./electrical-supply/symptoms";
import { engineSymptoms } from "./engine/symptoms";
import {
  absolute,
  and,
  choose,
  condition,
  divide,
  greater,
  less,
  loadAmps,
  lookUp,
  multiply,
  signOf,
  torqueOf,
} from "./expressions";
import { lightingSymptoms } from "./exterior-lighting/symptoms";
import { speedCurve } from "./power-steering/figures";
import type { SteeringRatings } from "./power-steering/ratings";

const effort = condition("steeringEffort");
const engineRunning = greater(condition("engineSpeed"), 600);
const steeringHard = greater(absolute(effort), 1.4);
/**
 * Assist in the direction of the hands as a share of what this car gives when all is well, taken behind the coupling:
 * a motor that turns for itself helps nobody.
 */
const assistShare = ({ assistCurve, torquePerAmp, gear }: SteeringRatings): Expression =>
  divide(
    multiply(torqueOf("M1"), signOf(effort)),
    multiply(
      lookUp(absolute(effort), assistCurve),
      lookUp(condition("roadSpeed"), speedCurve),
      torquePerAmp * gear.ratio * gear.efficiency,
    ),
  );
const lampLit = greater(loadAmps("E1"), 0.03);
const clusterAwake = { signal: "awake", of: "A4" };

/** What a driver notices without any instrument. */
export const symptoms = (steering: SteeringRatings): VehicleDocument["symptoms"] => [
  {
    id: "steeringWeight",
    title: "Steering effort felt",
    value: choose(engineRunning, choose(steeringHard, assistShare(steering), -20), -30),
    bands: [
      { below: -25, text: "heavy, as always without the engine running", normal: true },
      { below: -15, text: "nobody is turning the wheel", normal: true },
      {
        below: 0.08,
        text: "heavy: no assist at all, but the wheels follow the steering wheel",
        normal: false,
      },
      { below: 0.55, text: "much heavier than usual", normal: false },
      { below: 0.85, text: "somewhat heavier than usual", normal: false },
      { below: 1.18, text: "as light as usual at this speed", normal: true },
      { text: "lighter than usual, it darts to this side", normal: false },
    ],
  },
  {
    id: "steeringPull",
    title: "Hands off the wheel",
    value: choose(and(engineRunning, less(absolute(effort), 0.6)), loadAmps("M1"), 0),
    bands: [
      { below: -2.2, text: "the steering pulls to the left by itself", normal: false },
      { below: 2.2, text: "the steering wheel stays where it is", normal: true },
      { text: "the steering pulls to the right by itself", normal: false },
    ],
  },
  {
    id: "steeringWarningLamp",
    title: "Steering warning lamp",
    value: choose(
      engineRunning,
      choose(lampLit, 3, 1),
      choose(clusterAwake, choose(lampLit, 0, 2), choose(lampLit, 0, -2)),
    ),
    bands: [
      { below: -1, text: "out, the instrument cluster is off", normal: true },
      { below: 0.5, text: "on for the lamp check, goes out when the engine runs", normal: true },
      { below: 1.5, text: "out", normal: true },
      { below: 2.5, text: "stays out although the key is on", normal: false },
      { text: "on with the engine running", normal: false },
    ],
  },
  ...startingSymptoms,
  ...lightingSymptoms,
  ...engineSymptoms,
  ...wheelSpeedSymptoms,
  ...blowerSymptoms,
  ...comfortSymptoms,
];
