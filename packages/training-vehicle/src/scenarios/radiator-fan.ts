import type { ScenarioDocument } from "@probeworthy/evaluation";
import { candidate, carScenario, fuseBlown, nothingWrong, open, resistance } from "./scenario";

const job = (told: Parameters<typeof carScenario>[1]): ScenarioDocument => carScenario("radiator-fan", told);

/** Jobs about an engine that gets too hot, and about fans that never rest. */
export const radiatorFanScenarios: ScenarioDocument[] = [
  job({
    id: "boils-in-the-queue",
    title: "Boils in the queue",
    level: "starter",
    learningGoal: "Ask for the fan first, then measure across the motor that should turn.",
    instructorNote:
      "The main fan stands although it is asked for. A good technician makes the engine hot (coolant at 100 °C or more), sees the request in the live data of A2, and measures across the motor at X212. Nothing there: feed at X211 cavity 1 and ground at cavity 2 against battery negative divide. Full voltage there: the motor. F21 open asks for a reason; ohms across the motor are half a test, because brushes hang.",
    complaints: [
      "In the motorway queue the needle climbed until I turned the heater on. Moving, it is fine.",
      "It overheats when I stand still. I do not hear the big fan any more.",
    ],
    pool: [
      candidate("fan-brushes-open", "Brushes of the main fan do not touch", 2, {
        kind: "internalOpen",
        component: "M10",
        terminal: "1",
      }),
      candidate("fan-module-fuse", "Fuse F21 open", 1, fuseBlown("F21")),
      candidate("fan-feed-open", "Feed conductor of the fan module open", 1, open("W301")),
    ],
    startConditions: { key: "on", engineSpeed: 850, coolantTemperature: 104 },
    par: { shopMinutes: 10, readings: 5 },
  }),
  job({
    id: "fan-with-no-breath",
    title: "A fan with no breath",
    level: "intermediate",
    learningGoal: "Find a lost volt at a heavy consumer with the drop method, feed and ground.",
    instructorNote:
      "The main fan turns but too slowly. The module gives all it has, and something in the heavy circle takes the rest, or the motor itself is worn. A good technician measures the drop from F21 to X211 cavity 1 and from cavity 2 to battery negative with the engine hot. If both are small and the motor has its voltage, the motor is tired. A bad ground XE10 also lifts the module against the request lead, so that the fan may run on a cold engine and the auxiliary fan suffers with it.",
    complaints: [
      "The fan runs but there is hardly any air behind the radiator, and the temperature still climbs.",
      "It gets too hot in town. A friend says the fan turns, so it cannot be that.",
    ],
    pool: [
      candidate("fan-ground-corroded", "Front ground XE10 corroded", 2, resistance("XE10", 0.35, 0.9)),
      candidate("fan-feed-contact", "Burnt contact in X211 cavity 1", 2, resistance("X211.1", 0.4, 1.2)),
      candidate("fan-motor-worn", "Brushes of the main fan worn", 1, {
        kind: "motorWorn",
        component: "M10",
        ohms: { from: 0.45, to: 0.9, spread: "linear" },
      }),
    ],
    startConditions: { key: "on", engineSpeed: 850, coolantTemperature: 108 },
    par: { shopMinutes: 12, readings: 7 },
  }),
  job({
    id: "roars-from-key-on",
    title: "Roars from key-on",
    level: "intermediate",
    learningGoal:
      "Read an emergency plan: a fan that runs at once tells of a signal somebody does not believe.",
    instructorNote:
      "Main fan alone at full speed, no code: the request does not arrive at A6. Both fans and a code for the coolant temperature: A2 does not believe its sensor. A good technician separates the two by the auxiliary fan and the live data before a lead touches anything, then follows either the request lead (1.4 V or so cold) or the sensor's.",
    complaints: [
      "As soon as I turn the key the fan howls, even in the morning.",
      "The fan never stops now, and the heater is not even warm.",
    ],
    pool: [
      candidate("fan-request-open", "Request conductor open", 2, open("W318")),
      candidate("fan-request-pin", "Pin of the request pushed back in X211", 1, {
        kind: "backedOut",
        at: "X211.4",
      }),
      candidate("coolant-sensor-open", "Coolant sensor open", 1, {
        kind: "internalOpen",
        component: "B12",
        terminal: "1",
      }),
    ],
    startConditions: { key: "on", engineSpeed: 0, coolantTemperature: 20 },
    par: { shopMinutes: 12, readings: 6 },
  }),
  job({
    id: "one-fan-of-two",
    title: "One fan of two",
    level: "starter",
    learningGoal: "Work through a relay circuit: coil, contact, load, each with its feed and ground.",
    instructorNote:
      "The auxiliary fan alone is dead. A good technician listens for the click of K10, then measures 86 and 85 (is it asked, does it pull?), 30 and 87 (does it carry?), both sides of R5 and the motor. A seized motor shows nearly all voltage across R5 and F24's load: that R5 is hot is a result, not a cause.",
    complaints: [
      "One of the two fans never moves. My neighbour pointed it out, I had not noticed.",
      "On the hottest day it overheated uphill. One fan was running, the other not.",
    ],
    pool: [
      candidate("auxiliary-relay-coil", "Coil of K10 open", 1, { kind: "coilOpen", component: "K10" }),
      candidate("auxiliary-resistor-open", "Series resistor R5 burnt through", 2, {
        kind: "internalOpen",
        component: "R5",
        terminal: "1",
      }),
      candidate("auxiliary-fan-seized", "Auxiliary fan seized", 2, { kind: "motorSeized", component: "M11" }),
      candidate("auxiliary-relay-contact", "Contact of K10 burnt", 1, {
        kind: "contactResistive",
        component: "K10",
        ohms: { from: 2, to: 20, spread: "log" },
      }),
    ],
    startConditions: { key: "on", engineSpeed: 850, coolantTemperature: 104 },
    par: { shopMinutes: 12, readings: 7 },
  }),
  job({
    id: "flat-after-a-warm-evening",
    title: "Flat after a warm evening",
    level: "intermediate",
    learningGoal: "Tell a relay that is asked for from one that no longer lets go.",
    instructorNote:
      "The auxiliary fan turns with the key off. Terminal 86 has no voltage then, so the coil asks for nothing, and yet 87 is live: the contact is welded. A good technician pulls the relay as proof, and asks what welded it: he measures the fan's current before he fits the new one.",
    complaints: [
      "It hums under the bonnet all night and the battery is flat in the morning.",
      "I locked it and a fan went on running. I had to take the clamp off.",
    ],
    pool: [
      candidate("auxiliary-relay-welded", "Contact of K10 welded", 1, {
        kind: "contactWelded",
        component: "K10",
      }),
    ],
    par: { shopMinutes: 8, readings: 4 },
  }),
  job({
    id: "fans-when-stuck-in-traffic",
    title: "Both fans in traffic",
    level: "starter",
    learningGoal:
      "Prove that fans which run on a hot engine are right, with the request and the temperature.",
    instructorNote:
      "Nothing is wrong. At more than 97 °C both fans run, below 94 °C none. A good technician compares coolant temperature, request and motor voltage with the chart and sells nothing.",
    complaints: [
      "In traffic two fans come on and it sounds like an aeroplane. It did not do that in winter.",
      "The fan starts and stops and starts again on hot days. Is something wrong with it?",
    ],
    pool: [nothingWrong("fans-work-as-designed", "Fans follow the temperature as designed")],
    startConditions: { key: "on", engineSpeed: 850, coolantTemperature: 100 },
    par: { shopMinutes: 7, readings: 3 },
  }),
];
