import type { ScenarioDocument } from "@probeworthy/evaluation";
import {
  backedOut,
  candidate,
  carScenario,
  corroded,
  fuseBlown,
  nothingWrong,
  open,
  opensWhenMoved,
  resistance,
  shortToGround,
} from "./scenario";

const job = (told: Parameters<typeof carScenario>[1]): ScenarioDocument =>
  carScenario("exterior-lighting", told);

/** Jobs about headlamps, tail lamps, brake lamps and the trailer socket. */
export const exteriorLightingScenarios: ScenarioDocument[] = [
  job({
    id: "one-eye",
    title: "One eye",
    level: "starter",
    learningGoal: "Choose between bulb, feed and fuse with one measurement at the lamp.",
    instructorNote:
      "One dipped beam is dark, the main beam of the same bulb works: so the ground is good. A good technician measures the feed at X116 cavity 1 with the light on. Voltage there: the filament. None: back to F42, both sides, under the same condition.",
    complaints: [
      "My right headlamp is out. The full beam works.",
      "A policeman told me I only have one light in front.",
    ],
    pool: [
      candidate("dipped-filament-open", "Dipped filament of E4 burnt", 3, {
        kind: "lampOpen",
        component: "E4",
        filament: "first",
      }),
      candidate("dipped-fuse-blown", "Fuse F42 open", 1, fuseBlown("F42")),
      candidate("dipped-pin-backed-out", "Contact of X116 cavity 1 backed out", 1, backedOut("X116.1")),
    ],
    par: { shopMinutes: 5, readings: 3 },
  }),
  job({
    id: "weak-on-the-left",
    title: "Weak on the left",
    level: "starter",
    learningGoal: "Measure a lamp's feed and its ground while it burns, and compare with the other side.",
    instructorNote:
      "The left headlamp burns yellow. Voltage across the bulb is some volts short. Against battery negative the feed tells how much is lost before it, the ground pin how much behind it. The good side is the best chart there is. A bad ground also disturbs side lamp and indicator of that unit; a bad feed contact does not.",
    complaints: [
      "The left headlamp is much weaker than the right one, dipped and full.",
      "On the left I have a candle, on the right a headlamp.",
    ],
    pool: [
      candidate(
        "left-headlamp-ground",
        "Ground conductor of the left headlamp corroded",
        2,
        resistance("W172", 2, 3),
      ),
      candidate("left-ground-ring", "Front left ground XE8 rusty", 2, resistance("XE8", 1.1, 1.7)),
    ],
    par: { shopMinutes: 8, readings: 5 },
  }),
  job({
    id: "christmas-tree",
    title: "The tail lamp unit does what it likes",
    level: "intermediate",
    learningGoal: "Recognise a lost common ground by lamps that light each other.",
    instructorNote:
      "Brake, and the tail lamp glows; indicate, and the brake lamp flickers. Unplugging bulbs one after the other confuses; one reading settles it: the ground strip XS36 against battery negative with the brake lamps on. Is it also there at X130 cavity 1 on the harness side? Then it is the body side (with the number plate lamp wrong too), else the contact.",
    complaints: [
      "The man behind me says my left rear light goes mad when I brake.",
      "When I brake with the lights on, the left tail lamp goes dark and something else glows.",
    ],
    pool: [
      candidate("tail-left-ground-contact", "Ground contact of X130 backed out", 2, backedOut("X130.1")),
      candidate("tail-left-ground-wire", "Ground conductor behind X130 broken", 1, open("W237")),
      candidate("tail-body-ground", "Tail ground XE6 rusted through", 1, resistance("XE6", 20, 100)),
    ],
    par: { shopMinutes: 8, readings: 4 },
  }),
  job({
    id: "brakes-when-lit",
    title: "Brakes when I switch the lights on",
    level: "advanced",
    learningGoal: "Find an unwanted path between two circuits: bulb, holder or wrong plug.",
    instructorNote:
      "With side lamps on, brake lamps glow although nobody brakes. The ground is good. So a path joins 58 and 54. A bulb whose filaments touch joins them in one unit, and its removal ends it; crossed cavities join nothing but swap; water in the connector joins through some ohms and corrodes. A good technician pulls bulb or plug once, with a meter on the other circuit.",
    complaints: [
      "My brake lamps are on as soon as I switch on the lights.",
      "Somebody flashed me: my brake lights do not go out at night.",
    ],
    pool: [
      candidate("filaments-touch", "Filaments of bulb E12 touch", 2, {
        kind: "crossFilament",
        component: "E12",
        ohms: { from: 0.1, to: 0.8, spread: "log" },
      }),
      candidate("tail-connector-wet", "Water in X131", 1, {
        kind: "wetConnector",
        connector: "X131",
        ohms: { from: 6, to: 14, spread: "log" },
      }),
    ],
    par: { shopMinutes: 11, readings: 6 },
  }),
  job({
    id: "after-the-rear-panel",
    title: "After the rear panel was painted",
    level: "intermediate",
    learningGoal: "Suspect the last work done: read a connector face against the diagram.",
    instructorNote:
      "Two lamps have changed places on one side: tail and brake, or brake and indicator. A good technician compares which cavity carries what at X131 with the diagram, and finds two conductors in each other's place. Nothing is broken and no bulb is needed.",
    complaints: [
      "Since the body shop the lamps at the right rear do each other's work.",
      "They painted the rear panel, and now the wrong lamp lights at the right rear.",
    ],
    pool: [
      candidate("tail-cavities-crossed", "Cavities 2 and 3 of X131 crossed", 3, {
        kind: "crossedCavities",
        connector: "X131",
        first: "2",
        second: "3",
      }),
      candidate("tail-indicator-crossed", "Cavities 3 and 4 of X131 crossed", 1, {
        kind: "crossedCavities",
        connector: "X131",
        first: "3",
        second: "4",
      }),
    ],
    par: { shopMinutes: 9, readings: 5 },
  }),
  job({
    id: "no-brake-lamps",
    title: "No brake lamps",
    level: "starter",
    learningGoal: "Start where all three lamps still share one conductor.",
    instructorNote:
      "All three brake lamps are dark, so nobody looks at bulbs. F34, both sides, brake pressed or not. Then both sides of the switch S5 with the pedal pressed. A conductor open behind the switch leaves voltage at X112 cavity 2 and none at X104 cavity 12.",
    complaints: [
      "All my brake lamps are out. Somebody nearly ran into me.",
      "They say no brake light works any more, not even the one up in the window.",
    ],
    pool: [
      candidate("brake-fuse-blown", "Fuse F34 open", 2, fuseBlown("F34")),
      candidate("brake-switch-open", "Brake lamp switch open inside", 2, {
        kind: "internalOpen",
        component: "S5",
        terminal: "2",
      }),
      candidate("brake-wire-open", "Conductor behind the switch open", 1, open("W197")),
    ],
    par: { shopMinutes: 6, readings: 4 },
  }),
  job({
    id: "fuse-with-the-lights",
    title: "The fuse goes with the lights",
    level: "intermediate",
    learningGoal: "Divide a short circuit by plugs instead of feeding it fuses.",
    instructorNote:
      "F45 blows as soon as the side lamps are switched on. With the fuse out, ohms from its load side to ground. Unplugging X100, X132 and X130 one after the other splits front from tail; the one that makes the reading jump stands before the short. A cold 5 W bulb measures about three ohms: nearly a short, but not one.",
    complaints: [
      "Left tail lamp, left side lamp and number plate are dark, and the new fuse blew at once.",
      "That five-ampere fuse keeps blowing when I switch on the lights.",
    ],
    pool: [
      candidate(
        "side-left-short-tail",
        "Tail lamp conductor rubbed through in the boot",
        2,
        shortToGround("X130.2:h", 0.02, 0.1),
      ),
      candidate(
        "side-left-short-front",
        "Side lamp conductor rubbed through at the headlamp",
        1,
        shortToGround("X117.1:h", 0.02, 0.1),
      ),
      candidate("plate-wire-chafed", "Number plate conductor chafed in the tailgate", 1, {
        kind: "chafed",
        conductor: "W213",
        along: 0.6,
        ohms: { from: 0.02, to: 0.1, spread: "log" },
      }),
    ],
    startConditions: { key: "off", lightSwitch: "off" },
    par: { shopMinutes: 14, readings: 7 },
  }),
  job({
    id: "only-when-it-shakes",
    title: "Only when it shakes",
    level: "advanced",
    learningGoal:
      "Make an intermittent fault come: move one stretch of harness at a time with the meter connected.",
    instructorNote:
      "In the bay everything works. A good technician does not look for it with a meter at rest but makes the car do it: lights on, a meter across the lamp, then move tail, dash and engine bay harness one after the other. The stretch that makes the reading fall contains the joint; backing the probe along it finds the cavity.",
    complaints: [
      "On bad roads the right tail lamp goes off and on. On the drive it is all right.",
      "A friend behind me saw my rear light on the right blink on the cobbles.",
    ],
    pool: [
      candidate("tail-right-loose", "Contact of X131 cavity 2 loose", 1, opensWhenMoved("X131.2", "tail")),
      candidate(
        "tail-right-wire-broken",
        "Conductor to the right tail lamp broken in its insulation",
        1,
        opensWhenMoved("W215", "tail"),
      ),
    ],
    par: { shopMinutes: 13, readings: 7 },
  }),
  job({
    id: "caravan-on-saturday",
    title: "The caravan on Saturday",
    level: "intermediate",
    learningGoal:
      "Decide between car and trailer, then follow the socket back to where the car's own lamp still works.",
    instructorNote:
      "The car's own lamps are right; so the feed is good as far as the tail harness. A good technician measures at the socket X150 with the trailer coupled, under load. Green contacts drop volts only with current: the socket open shows 12 V. All trailer lamps wrong: contact 31. One: its own contact.",
    complaints: [
      "The trailer's brake lamps hardly light. The car's are all right.",
      "With the trailer on, its lights are dim and flicker. It worked with my brother's car.",
    ],
    pool: [
      candidate(
        "socket-ground-corroded",
        "Ground conductor of the socket corroded",
        2,
        resistance("W255", 2.2, 3.5),
      ),
      candidate("socket-green", "All contacts of X150 corroded", 2, corroded("X150", 1.8, 2.8)),
    ],
    startConditions: { key: "off", trailer: "coupled" },
    par: { shopMinutes: 10, readings: 6 },
  }),
  job({
    id: "too-much-light",
    title: "Melted plug",
    level: "advanced",
    learningGoal: "See a bulb of the wrong watts by its current, and a resistance it has caused.",
    instructorNote:
      "Two things: a bulb that is too strong and the contact it has cooked. Replacing only the plug brings the car back. A good technician reads the current or the feed's drop, compares left and right, and looks at what is printed on the bulb.",
    complaints: [
      "The plug at the left headlamp got soft. I put stronger bulbs in for the winter.",
      "It smells of burnt plastic at the left headlamp, and the light is yellowish.",
    ],
    pool: [
      candidate(
        "strong-bulb-and-contact",
        "Bulb of 100 W and a cooked contact in X115",
        2,
        { kind: "wrongBulb", component: "E3", watts: 100 },
        resistance("X115.2", 0.25, 0.45),
      ),
      candidate("strong-bulb", "Bulb of 100 W", 1, { kind: "wrongBulb", component: "E3", watts: 100 }),
    ],
    par: { shopMinutes: 10, readings: 6 },
  }),
  job({
    id: "dipped-goes-out",
    title: "Full beam puts the dipped beam out",
    level: "starter",
    learningGoal: "Know the design before you look for its fault.",
    instructorNote:
      "Nothing is wrong: this dip switch sends the current to one filament or the other. The diagram shows it, and the feeds at X115 change places exactly. A good technician shows the customer.",
    complaints: [
      "When I switch to full beam the dipped beam goes out. In my old car both stayed on.",
      "My dipped lamps fail whenever I use full beam.",
    ],
    pool: [nothingWrong("dip-switch-normal", "One filament at a time is the design")],
    par: { shopMinutes: 6, readings: 3 },
  }),
];
