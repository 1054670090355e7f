import type { ScenarioDocument } from "@probeworthy/evaluation";
import {
  backedOut,
  candidate,
  carScenario,
  corroded,
  fuseBlown,
  nothingWrong,
  open,
  resistance,
} from "./scenario";

const job = (told: Parameters<typeof carScenario>[1]): ScenarioDocument =>
  carScenario("pedal-and-throttle", told);

/** Jobs about an engine that does not follow the pedal. */
export const pedalAndThrottleScenarios: ScenarioDocument[] = [
  job({
    id: "pedal-without-effect",
    title: "Pedal without effect",
    level: "starter",
    learningGoal: "Use the code to choose one of six conductors, and the live data to say high, low or dead.",
    instructorNote:
      "One pedal track is at 0 V. A good technician looks at both tracks in the live data, then measures supply, ground and signal of the dead track at X202 against each other. Supply 5 V and ground 0 V at the sensor with a dead signal at the module: the signal conductor or a pin. Signal dead at the sensor too: the sensor.",
    complaints: [
      "The engine idles a bit high and does not react to the pedal at all. There is a message in the dash.",
      "I press the pedal and nothing happens. It crept home at walking pace.",
    ],
    pool: [
      candidate("pedal-signal-1-open", "Signal conductor of pedal track 1 open", 2, open("W347")),
      candidate("pedal-signal-2-pin", "Pin of track 2 pushed back in X201", 2, backedOut("X201.7")),
      candidate("pedal-track-2-dead", "Track 2 of the pedal sensor broken", 1, {
        kind: "internalOpen",
        component: "B10",
        terminal: "5",
      }),
      candidate("pedal-supply-2-open", "Supply conductor of pedal track 2 open", 1, open("W349")),
    ],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 12, readings: 6 },
  }),
  job({
    id: "loses-throttle-now-and-then",
    title: "Loses throttle now and then",
    level: "intermediate",
    learningGoal: "Explain a comparison code: two tracks that disagree, each within its own range.",
    instructorNote:
      "The comparison code says that the tracks are out of proportion, nothing more. A good technician moves the pedal slowly through its travel and compares track 1 with twice track 2. Too high at rest and less so at the floor: resistance in the ground of that track. Fine at rest and too low at the floor: resistance in its supply. Then ground and supply under the sensor's own load, at X202, plugged in.",
    complaints: [
      "Sometimes it drops to idle on the road. Key off, key on, and it drives again.",
      "After every wet day it refuses the throttle for a trip.",
    ],
    pool: [
      candidate(
        "pedal-ground-1-resistance",
        "Corrosion in the ground of pedal track 1",
        2,
        resistance("X201.5", 350, 900),
      ),
      candidate(
        "pedal-ground-2-resistance",
        "Corrosion in the ground of pedal track 2",
        1,
        resistance("X202.6", 350, 900),
      ),
      candidate(
        "pedal-supply-1-resistance",
        "Corrosion in the supply of pedal track 1",
        2,
        resistance("X202.1", 350, 900),
      ),
      candidate("pedal-connector-corroded", "X202 corroded", 1, corroded("X202", 400, 900)),
    ],
    startConditions: { key: "on", engineSpeed: 850, accelerator: 50 },
    par: { shopMinutes: 15, readings: 8 },
  }),
  job({
    id: "two-sensors-at-once",
    title: "Two sensors at once",
    level: "advanced",
    learningGoal: "Recognise a shared supply: several sensors dead together, none of them guilty.",
    instructorNote:
      "Pedal track 1 and both throttle tracks are low together: they share one 5 V rail. A good technician measures the rail at the sensor, sees it near 0 V, and unplugs one consumer after the other with the meter connected until it comes back. If it does not come back with all unplugged, the conductor itself is down.",
    complaints: [
      "Message in the dash, no throttle, and three codes at once. They want to sell me a pedal and a throttle.",
      "Since the air filter was changed it only idles.",
    ],
    pool: [
      candidate("throttle-supply-shorted", "Supply of the throttle sensor rubbed through to ground", 2, {
        kind: "shortToGround",
        at: "X203.1:h",
        ohms: { from: 0.3, to: 6, spread: "log" },
      }),
      candidate("throttle-sensor-shorted", "Throttle sensor shorted inside", 1, {
        kind: "internalShort",
        component: "B11",
        terminal: "5V",
        other: "31",
        ohms: { from: 1, to: 8, spread: "log" },
      }),
      candidate("pedal-supply-1-shorted", "Supply of pedal track 1 rubbed through to ground", 1, {
        kind: "shortToGround",
        at: "X202.1:h",
        ohms: { from: 0.3, to: 6, spread: "log" },
      }),
    ],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 16, readings: 8 },
  }),
  job({
    id: "throttle-plate-on-its-spring",
    title: "The plate stays on its spring",
    level: "intermediate",
    learningGoal: "Tell sensor from actuator: the codes of one are volts, of the other amperes.",
    instructorNote:
      "Pedal and throttle tracks are fine, the motor gets no current. A good technician measures the feed at X200 cavity 23, then the motor in ohms with X204 unplugged, before touching the throttle body. F22 open on a healthy motor wants a reason.",
    complaints: [
      "It idles at 1300 and that is all. The pedal is dead.",
      "Message in the dash and no power, even backwards up the drive it hardly went.",
    ],
    pool: [
      candidate("throttle-motor-open", "Throttle motor open", 2, {
        kind: "internalOpen",
        component: "M12",
        terminal: "1",
      }),
      candidate("throttle-motor-wire", "Conductor to the throttle motor open", 1, open("W363")),
      candidate("throttle-feed-fuse", "Fuse F22 open", 1, fuseBlown("F22")),
      candidate("throttle-feed-open", "Feed conductor of the throttle motor open", 1, open("W366")),
    ],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 14, readings: 7 },
  }),
  job({
    id: "crossed-after-the-clutch",
    title: "Crossed after the clutch job",
    level: "advanced",
    learningGoal: "Find two conductors in each other's cavity by comparing both ends.",
    instructorNote:
      "The tracks have changed places: track 1 shows half, track 2 shows double and leaves its range with the pedal down. A good technician sees in the live data that the numbers are right but in the wrong rows, and compares colours of both sides at X202.",
    complaints: [
      "The gearbox was out, and since then it does not take the throttle.",
      "They had the harness loose at the bulkhead. Now I have a message and no throttle.",
    ],
    pool: [
      candidate("pedal-signals-crossed", "Signals of both tracks crossed in X202", 1, {
        kind: "crossedCavities",
        connector: "X202",
        first: "2",
        second: "5",
      }),
    ],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 14, readings: 6 },
  }),
  job({
    id: "second-track-is-too-low",
    title: "The second track is too low",
    level: "intermediate",
    learningGoal: "Compare with the chart before condemning: half scale is the design.",
    instructorNote:
      "Nothing is wrong. The second track has half the voltage of the first by design, the engine follows, there is no code. A good technician reads both tracks at rest and at the floor, forms the ratio and says so.",
    complaints: [
      "A friend measured my pedal: one signal has only half the voltage. He says the pedal is worn out.",
      "I bought a used pedal because one track reads low, and the new one reads just as low. What is it?",
    ],
    pool: [nothingWrong("half-track-normal", "The second track has half the voltage by design")],
    startConditions: { key: "on", engineSpeed: 0 },
    par: { shopMinutes: 8, readings: 4 },
  }),
];
