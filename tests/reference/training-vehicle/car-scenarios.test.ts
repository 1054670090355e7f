import { carScenarios } from "@probeworthy/training-vehicle";
import { describeJobs } from "./scenario-suite";

describeJobs("the jobs about starting, charging, lighting and horn", carScenarios, {
  toldBySymptoms: {
    "weak-on-the-left":
      "a ground all lamps of that side share weakens side lamp and indicator too: look first",
    "brakes-when-lit":
      "water joins all circuits of the plug, filaments only two: the walk round the car counts",
    "after-the-rear-panel":
      "which lamp lights for which switch says which two conductors have changed places",
    "only-when-it-shakes":
      "the broken conductor takes the trailer's tail lamps with it, the contact does not",
    "caravan-on-saturday": "a lost common ground makes the car's own indicators glow, green contacts do not",
    "too-much-light": "both have the wrong bulb; the cooked contact shows beside it",
    "left-side-dead": "the pace of the flashing tells whether the module sees current or none at all",
  },
  alikeElsewhere: { "the-motor-hums": "motor-winding-open" },
});
