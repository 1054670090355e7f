import type { VehicleDocument } from "@probeworthy/vehicle";
import {
  absolute,
  and,
  atLeast,
  atMost,
  choose,
  chosen,
  condition,
  greater,
  less,
  or,
  speedOf,
} from "../expressions";

const keyOn = chosen("key", 2);
const engineRunning = greater(condition("engineSpeed"), 600);
const position = condition("windowPosition");
const wantsUp = and(chosen("windowSwitch", 1), greater(position, 0));
const wantsDown = and(chosen("windowSwitch", 2), less(position, 100));
const atStop = or(
  and(chosen("windowSwitch", 1), atMost(position, 0)),
  and(chosen("windowSwitch", 2), atLeast(position, 100)),
);
const windowSpeed = speedOf("M15");
const wiperSpeed = absolute(speedOf("M16"));

/** What a driver notices of window and wiper. */
export const comfortSymptoms: VehicleDocument["symptoms"] = [
  {
    id: "window",
    title: "Driver's window",
    value: choose(
      and(keyOn, engineRunning),
      choose(
        or(wantsUp, wantsDown),
        choose(
          less(absolute(windowSpeed), 5),
          1,
          choose(
            or(and(wantsUp, greater(windowSpeed, 0)), and(wantsDown, less(windowSpeed, 0))),
            choose(less(absolute(windowSpeed), 95), 2, 3),
            4,
          ),
        ),
        choose(atStop, 0, choose(greater(absolute(windowSpeed), 5), 5, 0)),
      ),
      0,
    ),
    bands: [
      { below: 0.5, text: "stands, as it should", normal: true },
      { below: 1.5, text: "does not move", normal: false },
      { below: 2.5, text: "crawls", normal: false },
      { below: 3.5, text: "moves as usual", normal: true },
      { below: 4.5, text: "moves the wrong way", normal: false },
      { text: "moves by itself", normal: false },
    ],
  },
  {
    id: "wiper",
    title: "Wipers",
    value: choose(
      and(keyOn, engineRunning),
      choose(
        chosen("wiperStage", 0),
        choose(greater(wiperSpeed, 10), 6, 0),
        choose(
          less(wiperSpeed, 15),
          1,
          choose(
            chosen("wiperStage", 1),
            choose(less(wiperSpeed, 120), 2, choose(greater(wiperSpeed, 240), 5, 3)),
            choose(less(wiperSpeed, 240), 4, 3),
          ),
        ),
      ),
      0,
    ),
    bands: [
      { below: 0.5, text: "stand, as they should", normal: true },
      { below: 1.5, text: "do not move", normal: false },
      { below: 2.5, text: "wipe slower than usual", normal: false },
      { below: 3.5, text: "wipe as usual", normal: true },
      { below: 4.5, text: "do not get faster in the fast stage", normal: false },
      { below: 5.5, text: "wipe fast although set to slow", normal: false },
      { text: "wipe although switched off", normal: false },
    ],
  },
];
