import { drivingAndComfortScenarios } from "@probeworthy/training-vehicle";
import { describeJobs } from "./scenario-suite";

describeJobs("the jobs about engine, wheels, network, blower, window and wiper", drivingAndComfortScenarios, {
  findingBrought: {
    "one-end-of-the-pair": "a short pair talks with a wrong terminator; another shop has measured it",
  },
  toldBySymptoms: {
    "flat-after-a-warm-evening": "the lesson is to prove what a fan that runs with the key off suggests",
  },
  alikeElsewhere: {
    "crossed-after-the-clutch": "pedal-signal-1-open",
    "window-when-the-door-moves": "lin-open-in-door",
  },
});
