import type { ScenarioDocument } from "@probeworthy/evaluation";
import { backedOut, candidate, carScenario, fuseBlown, nothingWrong, open, resistance } from "./scenario";

const job = (told: Parameters<typeof carScenario>[1]): ScenarioDocument => carScenario("fuel-pump", told);

/** Jobs about an engine without fuel, without enough of it, and a pump that is not asked. */
export const fuelPumpScenarios: ScenarioDocument[] = [
  job({
    id: "turns-and-turns",
    title: "Turns and turns",
    level: "starter",
    learningGoal: "Start at the consumer: voltage across the pump while cranking decides which half is left.",
    instructorNote:
      "The starter is brisk, the engine does not fire. A good technician asks for fuel first: somebody cranks, the meter lies across X208. Nothing there: K11's 87, then 30, then F27, and terminal 85 to see whether the coil is pulled. Voltage there and no pump: the pump. A fuse that blew asks for ohms from its load side to ground before the new one.",
    complaints: [
      "It turns over all day but does not start. It was fine when I parked it.",
      "No start. The starter sounds strong, the engine does not even cough.",
    ],
    pool: [
      candidate("pump-fuse", "Fuse F27 open", 1, fuseBlown("F27")),
      candidate("pump-relay-coil", "Coil of K11 open", 2, { kind: "coilOpen", component: "K11" }),
      candidate("pump-open", "Pump motor open", 2, {
        kind: "internalOpen",
        component: "M13",
        terminal: "1",
      }),
      candidate("pump-ground-open", "Pump ground conductor open", 1, open("W329")),
    ],
    par: { shopMinutes: 10, readings: 5 },
  }),
  job({
    id: "no-breath-uphill",
    title: "No breath uphill",
    level: "intermediate",
    learningGoal: "Judge a consumer with two levels: compare across the load in both, then divide the loss.",
    instructorNote:
      "Idle is perfect, power is missing. At full level the pump should get nearly all the battery has. If it stays at idle's 8 V, K12 does not bridge R6: coil, contact, or its conductors. If the full level is on but volts are missing, drop by drop: feed through X201, ground at XE11. The trap is to find 8 V at idle and call it the fault.",
    complaints: [
      "In town it is fine, uphill and on the motorway it has no power at all.",
      "When I floor it the car dies under me and comes back when I lift.",
    ],
    pool: [
      candidate("full-level-relay-coil", "Coil of K12 open", 2, { kind: "coilOpen", component: "K12" }),
      candidate("full-level-contact", "Contact of K12 burnt", 1, {
        kind: "contactResistive",
        component: "K12",
        ohms: { from: 4, to: 40, spread: "log" },
      }),
      candidate("pump-ground-resistance", "Corrosion at the ground XE11", 2, resistance("XE11", 1.1, 2)),
      candidate("pump-feed-resistance", "Bad contact in X201 cavity 2", 1, resistance("X201.2", 1.1, 2)),
    ],
    startConditions: { key: "on", engineSpeed: 3000, accelerator: 60, roadSpeed: 80 },
    par: { shopMinutes: 14, readings: 8 },
  }),
  job({
    id: "nobody-asks-the-pump",
    title: "Stalls and restarts",
    level: "advanced",
    learningGoal: "Follow a missing request to its reason: an output is off because an input says nothing.",
    instructorNote:
      "While cranking the pump runs, because the start request is enough. As soon as the key springs back it stops: A2 does not know that the engine turns. Relay, pump and conductors are good. A good technician sees in the live data that the pump relay is not asked for with the engine running, and goes to the crankshaft sensor: ohms and conductors at X207 against the chart.",
    complaints: [
      "It fires for a second while I hold the key and dies when I let go.",
      "Starts, stops. Starts, stops. Only as long as the starter turns it wants to live.",
    ],
    pool: [
      candidate("crank-sensor-wire", "Conductor of the crankshaft sensor open", 2, open("W361")),
      candidate("crank-sensor-open", "Crankshaft sensor coil open", 1, {
        kind: "internalOpen",
        component: "B14",
        terminal: "1",
      }),
      candidate("crank-sensor-pin", "Pin pushed back in X207", 1, backedOut("X207.1")),
    ],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 16, readings: 8 },
  }),
  job({
    id: "dies-on-bumps",
    title: "Dies on bumps",
    level: "advanced",
    learningGoal:
      "Catch an intermittent by moving one stretch of the harness at a time while it is measured.",
    instructorNote:
      "Nothing to find while nothing moves. A good technician puts the meter across the pump, lets the engine run and moves the harness by hand, stretch by stretch. At the bulkhead the volts fall away. Then he divides around X201, still moving.",
    complaints: [
      "Over speed humps it cuts out and comes back at once. On smooth roads never.",
      "It stutters when I drive into the yard over the kerb. You will not find it standing still, they told me.",
    ],
    pool: [
      candidate("pump-feed-intermittent", "Loose contact in X201 cavity 2", 1, {
        kind: "intermittent",
        at: "X201.2",
        ohms: 1e9,
        condition: "harnessMoved",
        is: "bulkhead",
      }),
      candidate("pump-relay-feed-intermittent", "Loose contact at the pump relay feed", 1, {
        kind: "intermittent",
        at: "W321",
        ohms: 1e9,
        condition: "harnessMoved",
        is: "engineBay",
      }),
    ],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 20, readings: 8 },
  }),
  job({
    id: "hums-in-the-garage",
    title: "Hums in the garage",
    level: "intermediate",
    learningGoal: "A load that runs without being asked: separate contact, coil side and output stage.",
    instructorNote:
      "The pump runs with the key off or with the engine standing. With the key off the coil has no feed: only a welded contact is left. With the key on and the engine standing it is either the contact or somebody pulls terminal 85 down. Unplug X200: a pump that stops was asked by the module, one that goes on has its cause before it.",
    complaints: [
      "There is a hum under the rear seat when the engine is off.",
      "I smell nothing, but something buzzes behind me with the key on.",
    ],
    pool: [
      candidate("pump-relay-welded", "Contact of K11 welded", 2, { kind: "contactWelded", component: "K11" }),
      candidate("pump-control-shorted", "Control conductor of K11 rubbed through to ground", 1, {
        kind: "shortToGround",
        at: "X200.17:h",
        ohms: { from: 0.2, to: 3, spread: "log" },
      }),
    ],
    startConditions: { key: "on", engineSpeed: 0 },
    par: { shopMinutes: 10, readings: 5 },
  }),
  job({
    id: "eight-volts-at-the-pump",
    title: "Only eight volts at the pump",
    level: "intermediate",
    learningGoal: "Know the design before calling a reading a fault: two levels, two voltages.",
    instructorNote:
      "Nothing is wrong. Somebody has measured at idle and read a tenth of the chart. A good technician measures idle and full level, finds both as in the chart, and writes so.",
    complaints: [
      "Another garage measured eight volts at my fuel pump and wants to renew the harness. Please check.",
      "They say my pump gets too little voltage. It drives perfectly well.",
    ],
    pool: [nothingWrong("pump-two-levels-normal", "Low level at idle is the design")],
    startConditions: { key: "on", engineSpeed: 850 },
    par: { shopMinutes: 8, readings: 4 },
  }),
];
