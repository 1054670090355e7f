import type { ScenarioDocument } from "@probeworthy/evaluation";
import {
  backedOut,
  candidate,
  carScenario,
  nothingWrong,
  open,
  opensWhenMoved,
  shortToGround,
} from "./scenario";

type Told = Parameters<typeof carScenario>[1];
const wheel = (told: Told): ScenarioDocument => carScenario("wheel-speed", told);
const network = (told: Told): ScenarioDocument => carScenario("data-network", told);
const rolling = { key: "on", engineSpeed: 1500, roadSpeed: 40 };

/** Jobs about wheel speeds and the data network. */
export const wheelAndNetworkScenarios: ScenarioDocument[] = [
  wheel({
    id: "message-at-every-start",
    title: "The message comes at every start",
    level: "starter",
    learningGoal: "Judge an active sensor by the current it draws, with the car standing.",
    instructorNote:
      "A code that returns with the car standing belongs to a front, active sensor. A good technician measures supply and signal at the sensor's plug, plugged in: no supply is the feed conductor, supply on both wires is an open signal conductor, supply and 0 V behind a plugged sensor is the sensor. Ohms through it prove nothing.",
    complaints: [
      "The anti-lock message is there as soon as I start. The speedometer works.",
      "The cluster says that the anti-lock brakes are not available.",
    ],
    pool: [
      candidate("front-left-sensor-open", "Sensor front left open inside", 2, {
        kind: "internalOpen",
        component: "B20",
        terminal: "1",
      }),
      candidate("front-left-feed-open", "Feed conductor of the sensor front left open", 1, open("W380")),
      candidate("front-right-signal-open", "Signal conductor front right open", 1, open("W383")),
      candidate("front-right-pin", "Pin pushed back at the sensor front right", 1, backedOut("X222.1")),
    ],
    par: { shopMinutes: 10, readings: 5 },
  }),
  wheel({
    id: "message-after-a-few-metres",
    title: "The message comes after a few metres",
    level: "intermediate",
    learningGoal: "Prove a passive sensor and its way in ohms, and divide the way at the in-line connector.",
    instructorNote:
      "The code waits until the car rolls: a rear coil. A good technician unplugs X220 and measures through coil and conductors: 1.2 kΩ is right, no path means cut, and X225 divides the way. A coil that is right in ohms may have a path to ground on one wire; measure each wire to ground too.",
    complaints: [
      "At the first corner the anti-lock message comes, never before.",
      "The message goes out when I restart and comes back as soon as I drive.",
    ],
    pool: [
      candidate("rear-left-coil-open", "Coil of the sensor rear left open", 2, {
        kind: "internalOpen",
        component: "B22",
        terminal: "1",
      }),
      candidate("rear-right-conductor-open", "Conductor to the sensor rear right open", 1, open("W390")),
      candidate("rear-left-inline-pin", "Pin pushed back in X225 cavity 1", 1, backedOut("X225.1")),
      candidate("rear-right-coil-shorted", "Coil of the sensor rear right shorted", 1, {
        kind: "internalShort",
        component: "B23",
        terminal: "1",
        other: "2",
        ohms: { from: 2, to: 10, spread: "log" },
      }),
    ],
    startConditions: rolling,
    par: { shopMinutes: 14, readings: 7 },
  }),
  wheel({
    id: "both-front-wheels-at-once",
    title: "Both front wheels at once",
    level: "advanced",
    learningGoal: "Two sensors lost at once have something in common: look for what they share.",
    instructorNote:
      "Both front sensors hang on one feed of the module. A good technician sees codes for both, measures about 0 V on both feeds, and unplugs one after the other while watching: the feed that comes back names the branch. Replacing the first sensor with a code is the trap.",
    complaints: [
      "The anti-lock message is on, and they have already fitted one new sensor for nothing.",
      "Both front sensors failed at the same time, says the last garage. Can that be?",
    ],
    pool: [
      candidate(
        "front-left-feed-shorted",
        "Feed conductor front left shorted to ground",
        1,
        shortToGround("X221.1:h", 0.1, 2),
      ),
      candidate(
        "front-right-feed-shorted",
        "Feed conductor front right shorted to ground",
        1,
        shortToGround("X222.1:h", 0.1, 2),
      ),
    ],
    par: { shopMinutes: 14, readings: 7 },
  }),
  wheel({
    id: "is-the-rear-sensor-dead",
    title: "Is the rear sensor dead?",
    level: "starter",
    learningGoal: "Know what a coil gives while the car stands: nothing.",
    instructorNote:
      "The customer has measured 0 V at a rear sensor with the car standing. A coil at a ring that does not turn makes no voltage. A good technician finds no code after a drive and 1.2 kΩ, and says so.",
    complaints: [
      "I measured my rear wheel sensor and there is 0 V on both wires. Please replace it.",
      "My neighbour found a dead sensor at the rear left, zero volts.",
    ],
    pool: [nothingWrong("rear-coil-at-rest", "A coil gives nothing while the wheel stands")],
    par: { shopMinutes: 8, readings: 4 },
  }),
  network({
    id: "one-end-of-the-pair",
    title: "Sixty ohms expected",
    level: "starter",
    learningGoal: "Measure the ends of a CAN pair and tell which one is missing.",
    instructorNote:
      "The car talks as if nothing were wrong: a pair this short forgives a wrong end. A good technician disconnects the battery, measures 120 Ω instead of 60 Ω at the socket, then unplugs X20: no path now means that the end behind the cluster is lost, 120 Ω that the engine module's end is. The value itself tells missing from drifted and from added.",
    complaints: [
      "The radio fitter measured the network at the socket and says that the value is wrong. I notice nothing.",
      "The inspection wrote: network resistance at the socket not as specified. The car drives as always.",
    ],
    pool: [
      candidate("cluster-end-missing", "Terminator R1 missing", 2, {
        kind: "terminatorMissing",
        component: "R1",
      }),
      candidate("engine-end-missing", "Terminator inside the engine module missing", 1, {
        kind: "terminatorMissing",
        component: "A2",
      }),
      candidate("cluster-end-drifted", "Terminator R1 drifted", 1, {
        kind: "terminatorDrifted",
        component: "R1",
        ohms: { from: 300, to: 600, spread: "log" },
      }),
      candidate("third-end-added", "A third terminator across the socket's wires", 1, {
        kind: "terminatorExtra",
        at: "X80:6",
        other: "X80:14",
        ohms: 120,
      }),
    ],
    par: { shopMinutes: 14, readings: 6 },
  }),
  network({
    id: "one-name-in-every-list",
    title: "One name in every list",
    level: "intermediate",
    learningGoal:
      "Read who misses whom over all modules, then prove feed, ground and wires of the missing one.",
    instructorNote:
      "One module does not answer and all others miss it, while the pair is sound. A good technician measures its feed and ground at its plug under load, then both bus wires at that plug. If all four are right, the module is silent itself.",
    complaints: [
      "The speedometer is dead and there are messages. The car drives.",
      "After a jump start the speedometer stays at zero.",
    ],
    pool: [
      candidate("brake-module-silent", "Brake module does not talk", 2, {
        kind: "silentNode",
        component: "A3",
      }),
      candidate("brake-module-high-open", "CAN high open to the brake module", 1, open("W42")),
      candidate("brake-module-ground-inside", "Ground inside the brake module open", 1, {
        kind: "internalOpen",
        component: "A3",
        terminal: "31",
      }),
    ],
    startConditions: rolling,
    par: { shopMinutes: 14, readings: 8 },
  }),
  network({
    id: "nobody-answers",
    title: "Nobody answers",
    level: "advanced",
    learningGoal: "Divide a bus that is held down, and say which section holds it.",
    instructorNote:
      "Nothing on the bus answers. A good technician looks at both means with the key on, sees which wire is held and where, disconnects the battery, measures high to low and each to ground, and splits the pair at X30, X105, X20 until the short is in the hand.",
    complaints: [
      "All messages at once, the speedometer dead, the steering heavy. It still starts.",
      "Everything went mad at the same moment on the motorway.",
    ],
    pool: [
      candidate("pair-shorted-engine-bay", "CAN high and low touch in the engine bay", 1, {
        kind: "shortBetween",
        at: "X30.1:h",
        other: "X30.2:h",
        ohms: { from: 0.1, to: 1, spread: "log" },
      }),
      candidate("low-shorted-to-supply", "CAN low touches a supply in the dash", 1, {
        kind: "shortToSupply",
        at: "X160.4:h",
        supply: "X160.1:h",
        ohms: { from: 0.1, to: 1, spread: "log" },
      }),
      candidate(
        "high-shorted-to-ground",
        "CAN high chafed to ground at the bulkhead",
        1,
        shortToGround("X30.1:b", 0.1, 1),
      ),
    ],
    par: { shopMinutes: 18, readings: 9 },
  }),
  network({
    id: "only-over-bumps",
    title: "Only over bumps",
    level: "advanced",
    learningGoal: "Find an intermittent open by moving one stretch of the harness at a time while measuring.",
    instructorNote:
      "At rest everything is right. A good technician keeps the meter on the suspected pair and moves one stretch after the other. What opens under the hand is the place; then divide at the nearest connector.",
    complaints: [
      "Over bad roads the dash goes dead for a second, then comes back.",
      "It only happens on cobblestones: messages, and gone again.",
    ],
    pool: [
      candidate(
        "bulkhead-high-intermittent",
        "CAN high opens in X30 when moved",
        1,
        opensWhenMoved("X30.1", "bulkhead"),
      ),
      candidate(
        "bulkhead-low-intermittent",
        "CAN low opens in X30 when moved",
        1,
        opensWhenMoved("X30.2", "bulkhead"),
      ),
    ],
    par: { shopMinutes: 18, readings: 9 },
  }),
];
