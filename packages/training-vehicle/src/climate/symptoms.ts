import type { VehicleDocument } from "@probeworthy/vehicle";
import { absolute, and, choose, chosen, condition, divide, greater, lookUp, speedOf } from "../expressions";

const stage = condition("blowerStage");
const fanSpeed = absolute(speedOf("M14"));
/** What this blower does in each stage when all is well and the engine runs, rad/s. */
const usual = lookUp(stage, [
  [0, 1],
  [1, 90],
  [2, 150],
  [3, 210],
  [4, 310],
]);
const engineRunning = greater(condition("engineSpeed"), 600);

/** What a driver notices of the blower. */
export const blowerSymptoms: VehicleDocument["symptoms"] = [
  {
    id: "blowerAir",
    title: "Air from the vents",
    value: choose(
      and(chosen("key", 2), engineRunning),
      choose(greater(stage, 0.5), divide(fanSpeed, usual), choose(greater(fanSpeed, 15), 5, -1)),
      -1,
    ),
    bands: [
      { below: -0.5, text: "nobody has asked for any, or the engine stands", normal: true },
      { below: 0.2, text: "none", normal: false },
      { below: 0.72, text: "less than this stage should give", normal: false },
      { below: 1.35, text: "what this stage should give", normal: true },
      { below: 4, text: "more than this stage should give", normal: false },
      { text: "blows although it is switched off", normal: false },
    ],
  },
];
