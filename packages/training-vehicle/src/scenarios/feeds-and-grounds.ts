import type { ScenarioDocument } from "@probeworthy/evaluation";
import { candidate, open, resistance, shortToGround, steeringScenario } from "./scenario";

/** Jobs whose cause lies in a feed, a fuse, a ground or the battery. */
export const feedAndGroundScenarios: ScenarioDocument[] = [
  steeringScenario({
    id: "heavy-all-at-once",
    title: "Heavy all at once",
    level: "starter",
    learningGoal: "Tell the two feeds of the steering apart and prove the battery feed with a measurement.",
    instructorNote:
      "The module is awake and reports the missing battery feed. A good technician reads the code, finds 0 V at X10 cavity 1 and battery voltage before the fuse, and measures on both sides of F2 under the same condition before taking it out. Before fitting a new one: is there a short behind it? Ohms from X10 cavity 1 to ground, unplugged.",
    complaints: [
      "The steering went heavy all at once and a yellow steering lamp came on. I can still drive, but parking is hard work.",
      "Since yesterday evening there is no power steering any more. The lamp with the little wheel stays on.",
      "My wife says the steering wheel suddenly felt like a lorry's, with a lamp on in the dash.",
    ],
    pool: [
      candidate("battery-feed-fuse-blown", "High-current fuse F2 open", 3, {
        kind: "fuseBlown",
        component: "F2",
      }),
      candidate("battery-feed-contact-open", "Contact of X10 cavity 1 backed out", 1, open("X10.1")),
    ],
    par: { shopMinutes: 8, readings: 5 },
  }),
  steeringScenario({
    id: "steering-asleep",
    title: "No help, and the scan tool cannot reach the steering",
    level: "starter",
    learningGoal:
      "Find out why a module is asleep, and decide whether a blown fuse is the cause or only the messenger.",
    instructorNote:
      "The cluster holds U0131-87 and the steering does not answer. A good technician goes to the ignition feed first: F11 has voltage on one side only. Then the question that separates the two candidates: resistance from the dead side of F11 to ground with the fuse out. With a clean wire a new fuse holds; with a short it goes at the next key-on.",
    complaints: [
      "No power steering this morning, and the steering lamp stays on.",
      "The car steers like an old tractor. The garage round the corner could not read the steering with their tester.",
    ],
    pool: [
      candidate("ignition-feed-fuse-blown", "Fuse F11 open, nothing else wrong", 1, {
        kind: "fuseBlown",
        component: "F11",
      }),
      candidate(
        "ignition-feed-short",
        "Ignition feed rubbed through to ground behind F11",
        1,
        shortToGround("X31.1:b", 0.02, 0.2),
      ),
    ],
    par: { shopMinutes: 10, readings: 7 },
  }),
  steeringScenario({
    id: "third-fuse-this-week",
    title: "The third fuse this week",
    level: "intermediate",
    learningGoal: "Locate a short to ground by dividing the circuit instead of feeding it fuses.",
    instructorNote:
      "F11 blows at every key-on. A good technician fits no further fuse: with the fuse out and the key off the meter shows a few tenths of an ohm from the load side of F11 to ground. Unplugging X31 splits dash from column, unplugging X11 splits wire from module.",
    complaints: [
      "My brother has put in the third small fuse this week. The steering helps for a second, then it is gone again.",
      "The fuse for the steering keeps blowing. Can you put a bigger one in?",
    ],
    pool: [
      candidate(
        "ignition-feed-short-dash",
        "Ignition feed shorted between fuse box and X31",
        1,
        shortToGround("X31.1:h", 0.02, 0.3),
      ),
      candidate(
        "ignition-feed-short-column",
        "Ignition feed shorted between X31 and the module",
        1,
        shortToGround("X11.2:h", 0.02, 0.3),
      ),
    ],
    par: { shopMinutes: 12, readings: 6 },
  }),
  steeringScenario({
    id: "gives-up-in-tight-turns",
    title: "Gives up in tight turns",
    level: "intermediate",
    learningGoal: "Find a resistance that hides until current flows: measure voltage drop under load.",
    instructorNote:
      "At rest everything reads right: feed, ground and resistance in ohms. The code for low motor current points at the power circuit. A good technician has a helper hold the wheel against its stop and measures where the voltage goes: battery positive to X10 cavity 1, X10 cavity 2 to battery negative, and across the motor. A healthy ground drops well below 0.1 V; a bad ring drops volts. With a bad contact at X10 cavity 2 the wire's side looks innocent, but the idle motor terminal stands volts above ground. With a bad contact at X13 neither shows, and only the motor's own voltage is missing.",
    complaints: [
      "Driving straight is fine. But when I park or turn tightly the steering gets heavy and the lamp comes on.",
      "In the multi-storey car park the steering gives up half-way round, and then there is this lamp. On the road I notice nothing.",
    ],
    pool: [
      candidate("power-ground-ring", "Ring at XE3 corroded", 3, resistance("XE3", 0.22, 0.5)),
      candidate("power-ground-contact", "Contact of X10 cavity 2 spread", 1, resistance("X10.2", 0.22, 0.5)),
      candidate(
        "motor-contact-resistance",
        "Contact of X13 cavity 1 spread",
        1,
        resistance("X13.1", 0.22, 0.5),
      ),
    ],
    par: { shopMinutes: 12, readings: 7 },
  }),
  steeringScenario({
    id: "slow-start-heavy-start",
    title: "Starts slowly, then no help",
    level: "starter",
    learningGoal: "See a weak source behind a steering complaint: test the battery under load, not at rest.",
    instructorNote:
      "The stored code says the battery feed was low, and it was: while cranking. At rest the battery looks tired but alive. A good technician measures battery voltage while cranking at the posts, and the drop of the negative side (battery post to body) in the same moment: the first accuses the battery, the second the strap.",
    complaints: [
      "It turns over slowly in the morning, and after it has started the steering is heavy until I switch off and start again.",
      "Sometimes there is no power steering after starting. The engine also cranks lazily, now that I think of it.",
    ],
    pool: [
      candidate("weak-battery", "Battery worn out", 3, {
        kind: "weakBattery",
        component: "G1",
        stateOfCharge: { from: 0.32, to: 0.38, spread: "linear" },
        internalOhmsFactor: { from: 1.5, to: 1.7, spread: "linear" },
      }),
      candidate(
        "body-ground-strap",
        "Battery negative ring at XE1 corroded",
        1,
        resistance("XE1", 0.036, 0.038),
      ),
    ],
    par: { shopMinutes: 8, readings: 5 },
  }),
  steeringScenario({
    id: "lamp-on-damp-days",
    title: "The lamp on damp days",
    level: "intermediate",
    learningGoal: "Use a voltage drop along a wire to find one bad contact in a circuit that still works.",
    instructorNote:
      "The module runs on too little voltage and says so. At F11 there is full voltage, at X11 cavity 2 several volts less; ohms across a corroded contact may look harmless, the drop with the module awake does not. A good technician measures along the feed and along the signal ground before unplugging anything, because unplugging cleans the contact. With the bad ground the module also sees too little battery feed while cranking and may refuse to assist until the key has been off.",
    complaints: [
      "When it has rained the steering lamp comes on and stays on.",
      "The steering lamp has come back since the windscreen was replaced. They said there was some water under the dash.",
    ],
    pool: [
      candidate("ignition-feed-contact-corroded", "X31 cavity 1 corroded", 2, resistance("X31.1", 6.3, 7)),
      candidate("signal-ground-contact-corroded", "X31 cavity 2 corroded", 1, resistance("X31.2", 6, 6.7)),
    ],
    par: { shopMinutes: 12, readings: 6 },
  }),
];
