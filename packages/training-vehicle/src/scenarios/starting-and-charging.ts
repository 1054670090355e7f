import type { ScenarioDocument } from "@probeworthy/evaluation";
import { backedOut, candidate, carScenario, fuseBlown, nothingWrong, open, resistance } from "./scenario";

const job = (told: Parameters<typeof carScenario>[1]): ScenarioDocument =>
  carScenario("starting-and-charging", told);

/** Jobs about starting, charging and a battery that is flat in the morning. */
export const startingAndChargingScenarios: ScenarioDocument[] = [
  job({
    id: "not-a-sound",
    title: "Not a sound",
    level: "starter",
    learningGoal:
      "Follow the thin half of the starting circuit from the key to terminal 50, one joint at a time.",
    instructorNote:
      "No click at all, while lamps and dash are bright: the heavy half has not even been asked. A good technician holds the key in START and measures K1 cavity 86 (is there a request?), then 85 against battery negative (does the coil's ground hold?), then 30 and 87. F31 dead on one side: why? Ohms from its load side to ground before the new one goes in.",
    complaints: [
      "I turn the key and nothing happens. The lamps are as bright as ever.",
      "It just will not start. No noise, no click, and the radio works.",
    ],
    pool: [
      candidate("starter-relay-coil-open", "Coil of the starter relay K1 open", 2, {
        kind: "coilOpen",
        component: "K1",
      }),
      candidate("starter-relay-ground", "Ground conductor of the relay coil open", 1, open("W103")),
    ],
    par: { shopMinutes: 8, readings: 5 },
  }),
  job({
    id: "click-and-no-more",
    title: "Click, and no more",
    level: "starter",
    learningGoal: "Tell a relay that clicks from a current that arrives: measure while the fault is there.",
    instructorNote:
      "The small relay pulls in, the solenoid does not. A good technician measures terminal 50 at X101 while somebody holds the key. 0 V there and battery voltage at K1 cavity 30: the contact of K1 or the conductor behind it. K1 cavity 87 decides between the two. Ohms through the relay at rest would show nothing.",
    complaints: [
      "When I turn the key something clicks under the bonnet, but the engine does not turn.",
      "Click. That is all it says in the morning. Jump leads did not help.",
    ],
    pool: [
      candidate("starter-relay-contact", "Contact of K1 burnt", 2, {
        kind: "contactResistive",
        component: "K1",
        ohms: { from: 3, to: 30, spread: "log" },
      }),
      candidate("starter-relay-fuse", "Fuse F31 open", 1, fuseBlown("F31")),
      candidate("solenoid-feed-open", "Conductor to terminal 50 open", 1, open("W106")),
      candidate("solenoid-pin-backed-out", "Terminal 50 pushed back in X101", 1, backedOut("X101.1")),
    ],
    par: { shopMinutes: 9, readings: 6 },
  }),
  job({
    id: "turns-like-treacle",
    title: "Turns like treacle",
    level: "intermediate",
    learningGoal:
      "Divide the heavy circle: battery, positive side, negative side, motor, all while cranking.",
    instructorNote:
      "Everything that carries the starter's current is suspect. Battery posts first: if they stay above 10 V the battery is innocent. Then one drop after the other while it cranks: post to clamp, clamp to K2 30, 30 to 45, engine block to battery negative. Whatever is far above two tenths of a volt is the place. Engine block against body and body against battery tell the two straps apart.",
    complaints: [
      "It turns over so slowly that I think it will not make it. It is a new battery.",
      "Starting has become slow, cold or warm, and once it smelt hot by the battery.",
    ],
    pool: [
      candidate("positive-clamp-dirty", "Positive clamp X1 dirty", 2, resistance("X1.1", 0.016, 0.026)),
      candidate("negative-clamp-dirty", "Negative clamp X2 dirty", 2, resistance("X2.1", 0.016, 0.026)),
      candidate("engine-strap", "Engine ground strap loose at XE2", 2, resistance("XE2", 0.016, 0.026)),
      candidate("solenoid-contact-burnt", "Heavy contact of K2 burnt", 1, {
        kind: "contactResistive",
        component: "K2",
        ohms: { from: 0.016, to: 0.026, spread: "linear" },
      }),
    ],
    par: { shopMinutes: 10, readings: 7 },
  }),
  job({
    id: "slow-with-a-good-circuit",
    title: "Slow, and every cable good",
    level: "intermediate",
    learningGoal: "Prove the motor or the battery by what is left when every drop is small.",
    instructorNote:
      "All drops are small. With a worn starter the battery stands up well and the full voltage lies across a motor that still turns slowly. With a tired battery its own posts collapse. A good technician takes post voltage and motor voltage in the same condition and compares both with the chart.",
    complaints: [
      "It turns slowly since the winter. A mate has cleaned all the cables already.",
      "Slow starting. The last garage fitted a new earth strap and it did not help.",
    ],
    pool: [
      candidate("starter-brushes-worn", "Brushes of the starter worn", 2, {
        kind: "motorWorn",
        component: "M2",
        ohms: { from: 0.018, to: 0.028, spread: "linear" },
      }),
      candidate("battery-tired", "Battery worn out, high inner resistance", 2, {
        kind: "weakBattery",
        component: "G1",
        stateOfCharge: { from: 0.45, to: 0.6, spread: "linear" },
        internalOhmsFactor: { from: 1.9, to: 2.3, spread: "linear" },
      }),
    ],
    par: { shopMinutes: 9, readings: 6 },
  }),
  job({
    id: "lamp-on-the-way-home",
    title: "The red lamp on the way home",
    level: "starter",
    learningGoal: "Decide with two voltages whether the alternator makes nothing or does not get through.",
    instructorNote:
      "Charge lamp on, battery at rest voltage with the engine running. A good technician measures B+ against battery positive: the same potential means nothing is made; volts of difference mean the way is open. A belt that slips or is gone, a blown F3, and a machine that is dead look alike from the battery post and quite different from B+.",
    complaints: [
      "The red battery lamp came on while driving and stayed on.",
      "After an hour with the red lamp the wipers became slow and I drove straight here.",
    ],
    pool: [
      candidate("belt-missing", "Alternator belt gone", 2, { kind: "beltSlips", component: "G2", share: 0 }),
      candidate("charging-fuse", "Fuse F3 open", 1, fuseBlown("F3")),
      candidate("belt-slips", "Alternator belt slips", 1, {
        kind: "beltSlips",
        component: "G2",
        share: { from: 0.25, to: 0.35, spread: "linear" },
      }),
    ],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 7, readings: 4 },
  }),
  job({
    id: "flat-after-short-trips",
    title: "Flat after short trips",
    level: "advanced",
    learningGoal:
      "Judge charging under load, at the battery and at the machine, and know what the sense wire does.",
    instructorNote:
      "No lamp, some charging, too little. With loads on the battery does not get 14 V. A good technician loads the machine (dipped beam, 2000 1/min) and compares posts, B+ and S with the chart. Resistance in the charging cable: B+ high above the post. A slipping belt or an open diode: B+ itself low under load and right without.",
    complaints: [
      "The battery is flat after a week of short trips. Twice now. No warning lamp.",
      "It charges, they said, and yet the battery is always low.",
    ],
    pool: [
      candidate("alternator-diode-open", "A rectifier diode of the alternator open", 1, {
        kind: "alternatorDiodeOpen",
        component: "G2",
      }),
      candidate("regulator-low", "Regulator holds too little", 1, {
        kind: "regulatorOff",
        component: "G2",
        volts: { from: -2.2, to: -1.6, spread: "linear" },
      }),
    ],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 12, readings: 7 },
  }),
  job({
    id: "bulbs-do-not-last",
    title: "Bulbs do not last",
    level: "intermediate",
    learningGoal:
      "See a charging voltage that is too high, and find out whether the regulator is misled or wrong.",
    instructorNote:
      "With the engine running the battery gets well over 15 V. Before the alternator is condemned: does S show what the battery shows? A resistance or an open in the sense wire makes the regulator push; a regulator that is off pushes although S is right. Steering and cluster report high feed voltage above their limits.",
    complaints: [
      "I have replaced four bulbs this month, and the battery smells.",
      "All the lights are glaring when I drive and the bulbs keep dying.",
    ],
    pool: [
      candidate("regulator-high", "Regulator holds too much", 1, {
        kind: "regulatorOff",
        component: "G2",
        volts: { from: 1.6, to: 2.2, spread: "linear" },
      }),
      candidate(
        "sense-contact-corroded",
        "Sense wire corroded at X102",
        1,
        resistance("X102.1", 8000, 20_000),
      ),
    ],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 9, readings: 5 },
  }),
  job({
    id: "lamp-that-never-comes",
    title: "A lamp that never comes on",
    level: "starter",
    learningGoal: "Use the lamp check: a tell-tale that stays dark with the key on is a fault.",
    instructorNote:
      "The customer noticed nothing but the inspection did. D+ at the alternator and both sides of E2 with the key on: battery voltage on the switched side of the lamp means the way to D+ is open, none at all means bulb or feed. Grounding the wire of unplugged X102 cavity 2 (through a fused lead) is the quick proof.",
    complaints: [
      "They did not pass my car: they say the charge lamp never lights.",
      "The red battery sign stays dark when I switch on. Should it not light for a moment?",
    ],
    pool: [
      candidate("charge-lamp-bulb", "Bulb of the charge lamp open", 1, { kind: "lampOpen", component: "E2" }),
      candidate("charge-lamp-wire", "Charge lamp wire open in the engine bay", 1, open("W110")),
      candidate("charge-lamp-pin", "Pin backed out in X100", 1, backedOut("X100.1")),
    ],
    par: { shopMinutes: 7, readings: 4 },
  }),
  job({
    id: "flat-on-monday",
    title: "Flat on Monday",
    level: "advanced",
    learningGoal:
      "Find a rest current: wait for sleep, measure, then divide by fuses without waking the car.",
    instructorNote:
      "The battery is good and charging is good. A good technician closes the doors, waits until the modules are asleep and measures the rest current or, without opening anything, the small voltage across each fuse. The fuse with a drop leads to the branch. An added device on a live feed, a module that stays awake and a brake lamp switch or door contact that holds one awake differ by where the current flows.",
    complaints: [
      "If it stands over the weekend it will not start on Monday. The battery is three months old.",
      "After two days in the garage it is dead. When I drive daily it is all right.",
    ],
    pool: [
      candidate("body-module-stays-awake", "Body module does not fall asleep", 2, {
        kind: "staysAwake",
        component: "A5",
      }),
      candidate("added-tracker", "Added device on the accessory socket's neighbour, live always", 2, {
        kind: "accessory",
        at: "F15:2",
        other: "body",
        watts: { from: 6, to: 14, spread: "linear" },
      }),
      candidate("door-contact-shorted", "Door contact conductor rubbed through", 1, {
        kind: "shortToGround",
        at: "X113.1:h",
        ohms: { from: 0.1, to: 2, spread: "log" },
      }),
    ],
    par: { shopMinutes: 20, readings: 7 },
  }),
  job({
    id: "dim-while-starting",
    title: "Everything dims when I start it",
    level: "starter",
    learningGoal: "Know what cranking does to a healthy battery, and say so with a reading.",
    instructorNote:
      "Nothing is wrong. The posts fall to between 10 and 11 V while the starter turns briskly, and the car charges with more than 14 V afterwards. A good technician shows both readings and sells no battery.",
    complaints: [
      "When I start it all the lights go dim for a second. Is the battery on its way out?",
      "The dash gets darker while the starter turns. My neighbour says I need a battery.",
    ],
    pool: [nothingWrong("cranking-dip-normal", "A healthy battery under a healthy starter")],
    par: { shopMinutes: 6, readings: 3 },
  }),
];
