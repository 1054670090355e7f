import type { ScenarioDocument } from "@probeworthy/evaluation";
import { candidate, open, shortToGround, steeringScenario } from "./scenario";

/** Jobs about the motor, the data bus, and behaviour that is normal. */
export const motorAndBusScenarios: ScenarioDocument[] = [
  steeringScenario({
    id: "tired-after-parking-practice",
    title: "Tired after parking practice",
    level: "starter",
    learningGoal:
      "Recognise thermal protection: the actual current stays below its target, and nothing is broken.",
    instructorNote:
      "No code, no lamp, feeds and grounds right under load. The scan tool shows a computed motor temperature above 115 °C and an actual current far below the target. A good technician lets it cool, sees the current come back, and tells the customer why. Replacing anything is wrong.",
    complaints: [
      "I practised parking with my daughter for half an hour and the steering got heavier and heavier. No lamp came on. This morning it was all right for the first few minutes.",
      "After a lot of turning on the spot the steering becomes heavy. When I have had a coffee it is light again.",
    ],
    pool: [
      {
        ...candidate("motor-hot", "Motor hot, the module protects it", 1, {
          kind: "motorHot",
          component: "M1",
          celsius: { from: 152, to: 172, spread: "linear" },
        }),
        normal: true,
      },
    ],
    startConditions: { key: "on", engineSpeed: 850, roadSpeed: 0, steeringEffort: 0 },
    par: { shopMinutes: 10, readings: 5 },
  }),
  steeringScenario({
    id: "heavier-on-the-motorway",
    title: "Heavier on the motorway",
    level: "starter",
    learningGoal: "Prove that nothing is wrong: assist that falls with road speed works as designed.",
    instructorNote:
      "Nothing is wrong. A good technician asks when, compares target and actual current at standstill and at speed, finds them together, finds no code, and reports normal operation with the readings that prove it. Parts fitted here are parts wasted.",
    complaints: [
      "In town it steers with one finger, on the motorway it is clearly heavier. My old car was not like that.",
      "The faster I drive the heavier the steering. I am afraid it will stop one day.",
    ],
    pool: [{ ...candidate("works-as-designed", "Nothing is wrong", 1), normal: true }],
    par: { shopMinutes: 8, readings: 5 },
  }),
  steeringScenario({
    id: "no-help-in-either-direction",
    title: "No help in either direction",
    level: "intermediate",
    learningGoal: "Separate an open motor circuit from an open power ground, which sets the same code.",
    instructorNote:
      "The code says that no motor current flows. The motor, its wires and the power ground can all do that. A good technician measures the motor circuit in ohms at X13, unplugged, and the power ground under load or at least in ohms with X10 unplugged, before condemning the motor.",
    complaints: [
      "The wheel is heavy both ways and the steering lamp comes on as soon as I turn it.",
      "Lamp goes out after starting, but at the first corner it comes on and the help is gone.",
    ],
    pool: [
      candidate("motor-winding-open", "Motor winding open", 2, {
        kind: "internalOpen",
        component: "M1",
        terminal: "1",
      }),
      candidate("motor-contact-open", "X13 cavity 2 backed out", 1, open("X13.2")),
      candidate("power-ground-open", "Power ground wire off at XE3", 1, open("XE3")),
    ],
    par: { shopMinutes: 12, readings: 6 },
  }),
  steeringScenario({
    id: "heavy-only-when-parking",
    title: "Heavy only when parking",
    level: "advanced",
    learningGoal: "Find one open wire of a data bus with a meter and the codes of several modules.",
    instructorNote:
      "Every module but the brake module misses the brake module: the interruption lies at its own branch. The steering assumes motorway speed, so the road feels normal and parking does not. A good technician lists the codes of all modules first, then measures between the bus wires at X21 with the key off, unplugged, where 60 Ω are missing, and finds by voltage or continuity which of the two wires is open.",
    complaints: [
      "The steering lamp is on. On the road it is as always, but parking is hard work.",
      "Since the brake fluid was changed a lamp is on and the car is heavy in the car park.",
    ],
    pool: [
      candidate("can-high-brake-wire-open", "CAN high wire broken at the brake module", 1, open("W42")),
      candidate("can-low-brake-wire-open", "CAN low wire broken at the brake module", 1, open("W43")),
      candidate("can-high-brake-contact-open", "X21 cavity 4 backed out", 1, open("X21.4")),
    ],
    par: { shopMinutes: 16, readings: 8 },
  }),
  steeringScenario({
    id: "lamp-but-steers-well",
    title: "The lamp is on but it steers well",
    level: "advanced",
    learningGoal: "Understand that a module can hear without being heard when one bus wire is open.",
    instructorNote:
      "The cluster misses the steering and the scan tool cannot reach it, but the steering assists: with one wire open it still makes out what the others send, while its own messages do not get through. A good technician does not take silence for a dead module, checks feed and ground of the module once, then measures between the bus wires at X11 with the key off, unplugged, where 60 Ω are missing, and divides at X31.",
    complaints: [
      "The steering lamp is on. The steering itself is fine, I notice no difference.",
      "Since the knee panel was off there is this steering lamp. It steers as always.",
    ],
    pool: [
      candidate("can-high-steering-wire-open", "CAN high open between dash and X31", 1, open("W29")),
      candidate("can-low-steering-wire-open", "CAN low open between dash and X31", 1, open("W30")),
      candidate("can-low-steering-contact-open", "X31 cavity 5 backed out", 1, open("X31.5")),
    ],
    par: { shopMinutes: 16, readings: 8 },
  }),
  steeringScenario({
    id: "many-lamps-at-once",
    title: "Many lamps at once",
    level: "advanced",
    learningGoal: "Recognise a bus that is held to one voltage and find where by dividing it.",
    instructorNote:
      "Nobody hears anybody and the scan tool reaches no module. Both bus wires average near 0 V although only one is shorted, because the terminators join them. A good technician measures which wire has the lower resistance to ground with the key off, then divides the bus at X30 and X31.",
    complaints: [
      "Half the dash is lit and the rev counter is dead. The steering is heavier than usual in the car park.",
      "All sorts of lamps came on at once, the steering lamp too.",
    ],
    pool: [
      candidate(
        "can-high-to-ground-column",
        "CAN high rubbed through at the column",
        1,
        shortToGround("X11.5:h", 0.1, 3),
      ),
      candidate(
        "can-high-to-ground-bulkhead",
        "CAN high rubbed through at the bulkhead",
        1,
        shortToGround("X30.1:h", 0.1, 3),
      ),
    ],
    par: { shopMinutes: 18, readings: 8 },
  }),
];
