import type { VehicleDocument } from "@probeworthy/vehicle";
import {
  absolute,
  and,
  choose,
  chosen,
  condition,
  divide,
  greater,
  loadAmps,
  multiply,
  pulledIn,
  speedOf,
} from "../expressions";
import { starterRatio } from "./starter";

const starting = chosen("key", 3);
const keyOn = chosen("key", 2);
const engineRunning = greater(condition("engineSpeed"), 600);

/** Revolutions of the crankshaft per minute while the starter turns it. */
const crankingSpeed = divide(multiply(speedOf("M2"), 60 / (2 * Math.PI)), starterRatio);
const lit = greater(absolute(loadAmps("E2")), 0.05);

/** What a driver notices of starting and charging. */
export const startingSymptoms: VehicleDocument["symptoms"] = [
  {
    id: "cranking",
    title: "Starter",
    value: choose(starting, crankingSpeed, -1),
    bands: [
      { below: -0.5, text: "not cranking", normal: true },
      { below: 20, text: "does not turn the engine", normal: false },
      { below: 150, text: "cranks slowly", normal: false },
      { text: "cranks briskly", normal: true },
    ],
  },
  {
    id: "starterSound",
    title: "Sound when starting",
    value: choose(starting, choose(pulledIn("K2"), 3, choose(pulledIn("K1"), 2, 1)), 0),
    bands: [
      { below: 0.5, text: "nobody is starting", normal: true },
      { below: 1.5, text: "nothing to hear from under the bonnet", normal: false },
      { below: 2.5, text: "only a small relay clicks", normal: false },
      { text: "the starter's solenoid pulls in", normal: true },
    ],
  },
  {
    id: "chargeLamp",
    title: "Charge lamp",
    value: choose(engineRunning, choose(lit, 3, 1), choose(keyOn, choose(lit, 0, 2), 0)),
    bands: [
      { below: 0.5, text: "as it should be with the engine standing", normal: true },
      { below: 1.5, text: "out", normal: true },
      { below: 2.5, text: "stays out although the key is on", normal: false },
      { text: "on with the engine running", normal: false },
    ],
  },
  {
    id: "starterRunsOn",
    title: "After releasing the key",
    value: and(greater(speedOf("M2"), 5), chosen("key", 2)),
    bands: [
      { below: 0.5, text: "the starter is quiet", normal: true },
      { text: "the starter goes on turning", normal: false },
    ],
  },
];
