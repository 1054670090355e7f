import type { ScenarioDocument } from "@probeworthy/evaluation";
import {
  candidate,
  carScenario,
  fuseBlown,
  nothingWrong,
  open,
  opensWhenMoved,
  resistance,
  shortToGround,
} from "./scenario";

type Told = Parameters<typeof carScenario>[1];
const blower = (told: Told): ScenarioDocument => carScenario("blower", told);
const comfort = (told: Told): ScenarioDocument => carScenario("wiper-and-window", told);
const stageFour = { key: "on", engineSpeed: 850, blowerStage: "four" };

/** Jobs about blower, window and wiper. */
export const comfortScenarios: ScenarioDocument[] = [
  blower({
    id: "no-air-at-all",
    title: "No air at all",
    level: "starter",
    learningGoal:
      "Measure at the consumer first; both leads against battery negative tell which half is left.",
    instructorNote:
      "Measure at X241 with stage 4 asked for. 0 V on both leads: feed side, K13 and its fuses. Full voltage on both: the ground half, controller or its ground. Full voltage across a motor that stands: the motor.",
    complaints: [
      "The heater blows no air at all, in no stage.",
      "No air, windows fogged, it stopped from one day to the next.",
    ],
    pool: [
      candidate("blower-relay-coil", "Coil of K13 open", 2, { kind: "coilOpen", component: "K13" }),
      candidate("blower-fuse", "Fuse F29 open", 1, fuseBlown("F29")),
      candidate("blower-controller-ground", "Ground conductor of the controller open", 1, open("W409")),
      candidate("blower-motor-open", "Blower motor open", 1, {
        kind: "internalOpen",
        component: "M14",
        terminal: "1",
      }),
    ],
    startConditions: stageFour,
    par: { shopMinutes: 10, readings: 5 },
  }),
  blower({
    id: "the-fuse-goes-again",
    title: "The small fuse goes again",
    level: "intermediate",
    learningGoal: "A fuse that blows again has a reason: unplug or pull until the short is gone.",
    instructorNote:
      "A new F28 goes with the key. A good technician measures ohms from its load side to ground before the next one. Relay pulled and the short gone: the relay's diode is the wrong way round. Still there: the conductor.",
    complaints: [
      "Since a relay was replaced there is no air. A new fuse went at once.",
      "The little fuse for the heater blows every time I turn the key.",
    ],
    pool: [
      candidate("blower-relay-diode", "Diode in K13 the wrong way round", 2, {
        kind: "diodeReversed",
        component: "K13",
      }),
      candidate(
        "blower-coil-feed-shorted",
        "Coil feed conductor shorted to ground",
        1,
        shortToGround("K13:86", 0.02, 0.1),
      ),
    ],
    startConditions: stageFour,
    par: { shopMinutes: 12, readings: 6 },
  }),
  blower({
    id: "air-like-a-sigh",
    title: "Air like a sigh",
    level: "intermediate",
    learningGoal: "Use voltage drops at full current to tell feed, ground and motor apart.",
    instructorNote:
      "Only stage 4 shows what is lost, because then the controller keeps nothing. A good technician takes the drop from battery plus to X241.1, from X241.2 to ground, and what is left across the motor.",
    complaints: [
      "In the top stage the air is weak, the lower ones seem all right.",
      "The heater has lost its strength over the winter.",
    ],
    pool: [
      candidate("blower-relay-contact", "Contact of K13 burnt", 2, {
        kind: "contactResistive",
        component: "K13",
        ohms: { from: 0.5, to: 0.9, spread: "log" },
      }),
      candidate("blower-ground-corroded", "Ground XE13 corroded", 1, resistance("XE13", 0.5, 0.9)),
      candidate("blower-motor-worn", "Brushes of the blower motor worn", 1, {
        kind: "motorWorn",
        component: "M14",
        ohms: { from: 0.5, to: 0.9, spread: "log" },
      }),
    ],
    startConditions: stageFour,
    par: { shopMinutes: 14, readings: 7 },
  }),
  blower({
    id: "voltage-with-the-blower-off",
    title: "Voltage with the blower off",
    level: "starter",
    learningGoal: "Know a load that is switched in its ground lead.",
    instructorNote:
      "The customer has measured 12 V at both leads of a blower that is off. That is the design: feed above, controller below. A good technician runs all stages, finds each right, and explains.",
    complaints: ["There are 12 volts at the heater motor although it is switched off. Is something stuck?"],
    pool: [nothingWrong("blower-live-at-rest", "Both leads live with the blower off is the design")],
    par: { shopMinutes: 8, readings: 4 },
  }),
  comfort({
    id: "the-window-stays",
    title: "The window stays where it is",
    level: "intermediate",
    learningGoal: "Prove a chain link by link: switch lead, one-wire bus, relay, motor.",
    instructorNote:
      "Press and listen: does a relay click? No click: is the lead at A7 pulled low, is LIN alive, has A9 its feed? Click and no movement: volts across the motor.",
    complaints: ["The driver's window does nothing, up or down.", "I cannot open my window any more."],
    pool: [
      candidate("lin-open-in-door", "LIN conductor open in the door harness", 2, open("W443")),
      candidate("lin-shorted", "LIN conductor shorted to ground", 1, shortToGround("X231.3:h", 0.1, 1)),
      candidate("window-panel-ground", "Ground of the switch panel open", 1, open("W431")),
      candidate("window-motor-open", "Window motor open", 1, {
        kind: "internalOpen",
        component: "M15",
        terminal: "1",
      }),
    ],
    startConditions: { key: "on", engineSpeed: 850, windowPosition: 50 },
    par: { shopMinutes: 14, readings: 8 },
  }),
  comfort({
    id: "down-but-not-up",
    title: "Down, but not up",
    level: "starter",
    learningGoal:
      "Read a reversing circuit: each direction needs one feed contact and the other's ground contact.",
    instructorNote:
      "Down works, so motor, feed and ground are good. Up needs S20's lead, A9's driver and K14's coil. Terminal 85 of K14 tells: low means asked and not pulled in.",
    complaints: [
      "The window went down and now it will not come up. It is going to rain.",
      "It opens but it does not close.",
    ],
    pool: [
      candidate("window-up-relay-coil", "Coil of K14 open", 2, { kind: "coilOpen", component: "K14" }),
      candidate("window-up-driver", "Driver for K14 dead", 1, {
        kind: "driverDead",
        component: "A9",
        output: "relayUp",
      }),
      candidate("window-up-lead", "Lead of the switch, up, open", 1, open("W439")),
    ],
    startConditions: { key: "on", engineSpeed: 850, windowPosition: 50 },
    par: { shopMinutes: 10, readings: 6 },
  }),
  comfort({
    id: "window-and-wiper-slow",
    title: "Window and wipers both slow",
    level: "advanced",
    learningGoal: "Two tired circuits with one thing in common: find it before you order two motors.",
    instructorNote:
      "Door and wiper share XE14. A good technician measures the ground of the wiper motor and of the door against battery negative while both run, and finds the same voltage at both.",
    complaints: [
      "The wipers are slow and the window crawls. Two motors at once?",
      "Everything on the left has become weak.",
    ],
    pool: [
      candidate("left-pillar-ground", "Ground XE14 corroded", 2, resistance("XE14", 0.6, 0.68)),
      candidate(
        "both-motors-worn",
        "Two faults at once: wiper ground conductor and door ground conductor",
        1,
        resistance("W474", 1.05, 1.2),
        resistance("W434", 1.05, 1.2),
      ),
    ],
    startConditions: { key: "on", engineSpeed: 850, windowPosition: 50, wiperStage: "fast" },
    par: { shopMinutes: 14, readings: 7 },
  }),
  comfort({
    id: "wipers-without-a-gear",
    title: "Wipers without a gear",
    level: "intermediate",
    learningGoal: "Tell a relay that welds from one that never closes, by what each stage does.",
    instructorNote:
      "Compare both stages across R8: a drop in FAST means that K17 does not bridge it, none in SLOW that it always does. No wiping in SLOW but in FAST: R8 itself.",
    complaints: ["The wipers know only one speed.", "There is no difference between slow and fast any more."],
    pool: [
      candidate("wiper-fast-welded", "Contact of K17 welded", 1, { kind: "contactWelded", component: "K17" }),
      candidate("wiper-resistor-open", "Series resistor R8 open", 1, {
        kind: "internalOpen",
        component: "R8",
        terminal: "1",
      }),
      candidate("wiper-fast-coil", "Coil of K17 open", 1, { kind: "coilOpen", component: "K17" }),
      candidate("wiper-fast-contact", "Contact of K17 burnt", 1, {
        kind: "contactResistive",
        component: "K17",
        ohms: { from: 4, to: 30, spread: "log" },
      }),
    ],
    par: { shopMinutes: 12, readings: 6 },
  }),
  comfort({
    id: "window-when-the-door-moves",
    title: "Only with the door ajar",
    level: "advanced",
    learningGoal: "Catch a break in the door harness while it is moved.",
    instructorNote:
      "The conductor breaks where it bends. A good technician watches the feed in the door while moving the harness, then opens X230.",
    complaints: [
      "The window works when it likes. Moving the door helps.",
      "If I open the door a little the window works.",
    ],
    pool: [
      candidate(
        "door-feed-intermittent",
        "Feed opens in X230 when the door harness moves",
        1,
        opensWhenMoved("X230.1", "door"),
      ),
    ],
    startConditions: { key: "on", engineSpeed: 850, windowPosition: 50 },
    par: { shopMinutes: 16, readings: 8 },
  }),
];
