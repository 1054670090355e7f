import type { ScenarioDocument } from "@probeworthy/evaluation";
import { candidate, open, shortToGround, steeringScenario } from "./scenario";

/** Jobs whose cause lies in the torque sensor, its supply, its ground or its signals. */
export const torqueSensorScenarios: ScenarioDocument[] = [
  steeringScenario({
    id: "no-help-after-column-work",
    title: "No help since the column was out",
    level: "starter",
    learningGoal: "Recognise an open sensor ground: both signals sit at the supply.",
    instructorNote:
      "Both torque signals are high and the supply is right. A good technician measures at the sensor, not only against the body: supply to sensor ground reads next to nothing although supply to body reads 5 V, so the ground is missing. The body of the car as the only reference hides this fault.",
    complaints: [
      "They had the steering column out for a noise. Since then no help and the lamp is on.",
      "After the column was repaired elsewhere the power steering does not work at all.",
    ],
    pool: [
      candidate("sensor-ground-wire-open", "Sensor ground wire broken", 2, open("W32")),
      candidate("sensor-ground-pin-module", "X12 cavity 4 backed out", 1, open("X12.4")),
      candidate("sensor-ground-pin-sensor", "X15 cavity 1 backed out", 1, open("X15.1")),
    ],
    par: { shopMinutes: 10, readings: 6 },
  }),
  steeringScenario({
    id: "lamp-after-new-radio",
    title: "The lamp since the new radio",
    level: "intermediate",
    learningGoal: "Separate a dead sensor supply from a supply that is being pulled down.",
    instructorNote:
      "The module limits the current into its sensor supply, so a short shows a low voltage and blows nothing. A good technician unplugs the sensor: if the supply comes back the sensor is to blame, if it stays low the wire is. Then X12: if the supply comes back with the harness off, the module is good.",
    complaints: [
      "Since my cousin fitted the new radio the steering lamp is on and the wheel is heavy.",
      "The steering stopped helping after someone worked under the dash.",
    ],
    pool: [
      candidate(
        "sensor-supply-short-to-ground",
        "Sensor supply wire squeezed against the body",
        2,
        shortToGround("X12.2:h", 1, 12),
      ),
      candidate("sensor-supply-short-to-sensor-ground", "Sensor supply and ground wires touch", 1, {
        kind: "shortBetween",
        at: "X15.4:h",
        other: "X15.1:h",
        ohms: { from: 1, to: 12, spread: "log" },
      }),
    ],
    par: { shopMinutes: 12, readings: 6 },
  }),
  steeringScenario({
    id: "cut-out-on-a-bump",
    title: "Cut out on a bump",
    level: "starter",
    learningGoal: "Use the mirror pair: one signal right and the other at 0 V means one wire.",
    instructorNote:
      "Supply and ground of the sensor are right, one signal rests at half the supply, the other at 0 V at the module. A good technician compares the two ends of that wire: present at X15, missing at X12. If it is missing at X15 too, the sensor is open inside.",
    complaints: [
      "I drove over a bump and the help was gone, with the steering lamp on ever since.",
      "Heavy steering and the lamp, from one moment to the next on a rough road.",
    ],
    pool: [
      candidate("signal-1-wire-open", "Torque signal 1 wire broken", 1, open("W33")),
      candidate("signal-2-wire-open", "Torque signal 2 wire broken", 1, open("W34")),
      candidate("signal-1-pin-sensor", "X15 cavity 2 backed out", 1, open("X15.2")),
      candidate("signal-2-open-inside", "Signal 2 open inside the sensor", 1, {
        kind: "internalOpen",
        component: "B1",
        terminal: "S2",
      }),
    ],
    par: { shopMinutes: 10, readings: 6 },
  }),
  steeringScenario({
    id: "wanders-to-one-side",
    title: "Wanders to one side",
    level: "advanced",
    learningGoal: "Find a sensor that is wrong without being wrong enough for a code.",
    instructorNote:
      "No code, no lamp. One signal rests a few tenths of a volt off the middle, so the pair no longer adds up to the supply, and the module sees effort where there is none. A good technician reads both signals with nobody touching the wheel and adds them up; turning the wheel both ways shows the same error everywhere, and a check at the sensor's own connector shows that the wires are innocent.",
    complaints: [
      "Hands off the wheel the car turns by itself to one side. The tyre shop checked the alignment and found nothing.",
      "Turning one way is very light, the other way heavy. No lamp.",
    ],
    pool: [
      candidate("signal-1-high", "Signal 1 offset upwards", 1, {
        kind: "sensorOffset",
        component: "B1",
        channel: "S1",
        volts: { from: 0.22, to: 0.3, spread: "linear" },
      }),
      candidate("signal-2-high", "Signal 2 offset upwards", 1, {
        kind: "sensorOffset",
        component: "B1",
        channel: "S2",
        volts: { from: 0.22, to: 0.3, spread: "linear" },
      }),
      candidate("signal-1-low", "Signal 1 offset downwards", 1, {
        kind: "sensorOffset",
        component: "B1",
        channel: "S1",
        volts: { from: -0.3, to: -0.22, spread: "linear" },
      }),
    ],
    par: { shopMinutes: 14, readings: 8 },
  }),
  steeringScenario({
    id: "help-gone-after-seat-heater",
    title: "No help since the seat heater was fitted",
    level: "intermediate",
    learningGoal: "Read a signal that is too high and decide what it touches.",
    instructorNote:
      "Signal 1 is far above its window. A good technician asks what voltage it has: 5 V means it touches the sensor supply, more means a battery or ignition feed. Unplugging the sensor leaves the voltage in place, so the wire and not the sensor brings it. Key off tells which: the sensor supply and the ignition feed die, a battery feed does not.",
    complaints: [
      "A friend fitted a seat heater and since then the steering is heavy and the lamp is on.",
      "They drilled through the panel under the column for an accessory. Now no power steering.",
    ],
    pool: [
      candidate("signal-1-to-sensor-supply", "Signal 1 touches the sensor supply", 1, {
        kind: "shortToSupply",
        at: "X12.1:h",
        supply: "X12.2:h",
        ohms: { from: 2, to: 40, spread: "log" },
      }),
      candidate("signal-1-to-ignition-feed", "Signal 1 touches the ignition feed", 1, {
        kind: "shortToSupply",
        at: "X12.1:h",
        supply: "X11.2:h",
        ohms: { from: 2, to: 40, spread: "log" },
      }),
    ],
    par: { shopMinutes: 12, readings: 6 },
  }),
];
