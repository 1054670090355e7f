import type { ScenarioDocument } from "@probeworthy/evaluation";
import { candidate, carScenario, fuseBlown, open, opensWhenMoved, resistance } from "./scenario";

const job = (told: Parameters<typeof carScenario>[1]): ScenarioDocument =>
  carScenario("indicators-and-horn", told);

/** Jobs about the body module, the indicators and the horn. */
export const indicatorAndHornScenarios: ScenarioDocument[] = [
  job({
    id: "in-a-hurry",
    title: "In a hurry on the right",
    level: "starter",
    learningGoal: "Read a fast indicator as a message and find the lamp it tells of.",
    instructorNote:
      "One side flashes twice as fast and the body module holds a code for low current: one 21 W bulb of that side draws nothing. Walk round the car first. Then feed and ground at the dark lamp while it is commanded. A module or a flasher is never the first suspect.",
    complaints: [
      "The right indicator ticks like mad, the left one is normal.",
      "My right indicator has become twice as fast.",
    ],
    pool: [
      candidate("indicator-bulb", "Bulb of the rear right indicator burnt", 3, {
        kind: "lampOpen",
        component: "E14",
      }),
      candidate("indicator-front-ground", "Ground of the front right indicator open", 1, open("W178")),
      candidate("indicator-rear-wire", "Feed of the rear right indicator open", 1, open("W224")),
    ],
    par: { shopMinutes: 6, readings: 4 },
  }),
  job({
    id: "no-indicators-at-all",
    title: "No indicators at all",
    level: "starter",
    learningGoal: "Separate an output without power from an input that never arrives.",
    instructorNote:
      "Hazard warning is dead as well, so the switches are innocent. Scan data: indicator feed near 0 V. F37, both sides. With the feed there, the module's outputs are measured under command.",
    complaints: [
      "No indicators and no hazard lights.",
      "Neither side blinks, and the warning triangle does nothing.",
    ],
    pool: [
      candidate("indicator-feed-fuse", "Fuse F37 open", 2, fuseBlown("F37")),
      candidate("indicator-feed-wire", "Indicator feed open behind F37", 1, open("W116")),
    ],
    par: { shopMinutes: 6, readings: 3 },
  }),
  job({
    id: "left-side-dead",
    title: "Left side dead",
    level: "intermediate",
    learningGoal: "Prove a dead driver: command there, feed there, output not, and nothing pulls it down.",
    instructorNote:
      "Hazard warning flashes the right side only. The scan tool shows the switch request. With the indicator feed right, X104 cavity 13 stays at 0 V under command: before the module is condemned, ohms of the unplugged output to ground prove that it is not pulled down, and a fused jumper from the feed lights the lamps. With the splice conductor open the module does put out voltage.",
    complaints: [
      "The left indicators are dead, front and rear. The right ones work.",
      "On the left nothing blinks, not even with the hazard switch.",
    ],
    pool: [
      candidate("left-driver-dead", "Left output of the body module dead", 1, {
        kind: "driverDead",
        component: "A5",
        output: "leftLamps",
      }),
      candidate("left-output-wire", "Conductor from output to splice open", 1, open("W203")),
    ],
    par: { shopMinutes: 10, readings: 6 },
  }),
  job({
    id: "mute",
    title: "Mute",
    level: "starter",
    learningGoal: "Divide a relay circuit by its click: coil side or contact side.",
    instructorNote:
      "Press the button and listen at K3. A click: K3 cavity 87, then the horn's own feed and ground. No click: fuse F32 first, then whether the module pulls 85 down, then the button's wire, which the scan tool shows.",
    complaints: ["The horn does not work.", "It failed the inspection because of the horn."],
    pool: [
      candidate("horn-fuse", "Fuse F32 open", 2, fuseBlown("F32")),
      candidate("horn-relay-coil", "Coil of K3 open", 1, { kind: "coilOpen", component: "K3" }),
      candidate("horn-feed-open", "Conductor from relay to horn open", 1, open("W136")),
      candidate("horn-button-wire", "Horn button wire open", 1, open("W125")),
    ],
    par: { shopMinutes: 7, readings: 5 },
  }),
  job({
    id: "croaks",
    title: "Croaks like a crow",
    level: "intermediate",
    learningGoal: "Use a voltage drop under load on both sides of a load that half works.",
    instructorNote:
      "The horn sounds, but weakly. Its feed and its ground are measured while it sounds: a burnt contact of K3 drops volts between 30 and 87, a bad ground lifts X109 cavity 2. Open-circuit both look perfect.",
    complaints: ["The horn only croaks.", "My horn sounds like a sick crow, worse every week."],
    pool: [
      candidate("horn-relay-contact", "Contact of K3 burnt", 1, {
        kind: "contactResistive",
        component: "K3",
        ohms: { from: 1.7, to: 3, spread: "log" },
      }),
      candidate("horn-ground", "Ground conductor of the horn corroded", 1, resistance("W137", 1.7, 3)),
    ],
    par: { shopMinutes: 8, readings: 5 },
  }),
  job({
    id: "honks-on-its-own",
    title: "Honks on its own",
    level: "advanced",
    learningGoal: "Find which of two controls asks for something nobody wants.",
    instructorNote:
      "It sounds without the button. Does the scan tool show a request? If so the button's wire is at ground: unplugging X108 tells wire from button. If not, the module asks for nothing and the contact of K3 is welded, or its coil wire is grounded: pulling 85 tells the two apart.",
    complaints: [
      "The horn went off in the middle of the night and would not stop until I pulled a fuse.",
      "It honks by itself. The neighbours are not amused.",
    ],
    pool: [
      candidate("horn-contact-welded", "Contact of K3 welded", 1, { kind: "contactWelded", component: "K3" }),
      candidate("horn-button-grounded", "Horn button wire rubbed through", 1, {
        kind: "shortToGround",
        at: "X108.1:h",
        ohms: { from: 0.2, to: 20, spread: "log" },
      }),
      candidate("horn-coil-grounded", "Coil wire of the horn relay rubbed through", 1, {
        kind: "chafed",
        conductor: "W134",
        along: 0.5,
        ohms: { from: 0.2, to: 10, spread: "log" },
      }),
    ],
    par: { shopMinutes: 11, readings: 6 },
  }),
  job({
    id: "sometimes-silent",
    title: "Sometimes silent",
    level: "advanced",
    learningGoal: "Prove an intermittent by moving the harness while the circuit is asked to work.",
    instructorNote:
      "The horn works at rest and fails when the column or the engine bay harness is moved. Button pressed, meter at the horn, one stretch after the other. What still arrives at the moment it fails (request, coil, contact) tells where.",
    complaints: [
      "Sometimes the horn works, sometimes not, mostly not when I have turned the wheel.",
      "The horn has a will of its own.",
    ],
    pool: [
      candidate(
        "clock-spring-loose",
        "Contact of X108 cavity 1 loose",
        2,
        opensWhenMoved("X108.1", "column"),
      ),
      candidate(
        "horn-plug-loose",
        "Contact of X109 cavity 1 loose",
        1,
        opensWhenMoved("X109.1", "engineBay"),
      ),
    ],
    par: { shopMinutes: 12, readings: 6 },
  }),
];
