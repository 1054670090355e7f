import type { Fault } from "./fault";

/** Where a kind of fault stands in a list. */
export const faultFamilies = [
  "harness",
  "connector",
  "fuse",
  "relay",
  "lamp",
  "sensor",
  "motor",
  "supply",
  "part",
  "module",
  "bus",
] as const;
export type FaultFamily = (typeof faultFamilies)[number];

/** How bad a fault of a kind can be: the field of the fault that says so, and its usual range. */
export interface SeverityScale {
  readonly field: string;
  /** Empty for a share or where the unit is the sensor's own. */
  readonly unit: string;
  readonly minimum: number;
  readonly maximum: number;
  readonly scale: "log" | "linear";
}

export interface FaultRow {
  /** Shop words for a list. */
  readonly title: string;
  readonly meaning: string;
  readonly family: FaultFamily;
  readonly severity?: SeverityScale;
  /** How often it is the cause, beside the others; common practice, no source. */
  readonly priorRate: number;
}

/** Every kind of fault, in the order of the schema's families. */
export const faultTable: Readonly<Record<Fault["kind"], FaultRow>> = {
  open: { title: "Open circuit", meaning: "conductor or contact parted", family: "harness", priorRate: 10 },
  seriesResistance: {
    title: "High resistance",
    meaning: "corrosion or damage that carries current poorly",
    family: "harness",
    severity: { field: "ohms", unit: "Ω", minimum: 0.05, maximum: 500, scale: "log" },
    priorRate: 14,
  },
  intermittent: {
    title: "Intermittent contact",
    meaning: "makes and breaks with movement, heat or position",
    family: "harness",
    severity: { field: "ohms", unit: "Ω", minimum: 1, maximum: 1000000000, scale: "log" },
    priorRate: 8,
  },
  backedOut: {
    title: "Terminal backed out",
    meaning: "the terminal has slipped back in its cavity",
    family: "connector",
    priorRate: 4,
  },
  spreadTerminal: {
    title: "Spread terminal",
    meaning: "the socket no longer grips its pin",
    family: "connector",
    severity: { field: "ohms", unit: "Ω", minimum: 0.05, maximum: 50, scale: "log" },
    priorRate: 5,
  },
  corroded: {
    title: "Corroded connector",
    meaning: "every contact of the connector has grown resistance",
    family: "connector",
    severity: { field: "ohms", unit: "Ω", minimum: 0.05, maximum: 20, scale: "log" },
    priorRate: 5,
  },
  wetConnector: {
    title: "Wet connector",
    meaning: "water joins neighbouring cavities",
    family: "connector",
    severity: { field: "ohms", unit: "Ω", minimum: 200, maximum: 200000, scale: "log" },
    priorRate: 4,
  },
  crossedCavities: {
    title: "Crossed cavities",
    meaning: "two conductors sit in each other's cavity after a repair",
    family: "connector",
    priorRate: 1,
  },
  shortToGround: {
    title: "Short to ground",
    meaning: "insulation worn through to the body",
    family: "harness",
    severity: { field: "ohms", unit: "Ω", minimum: 0.01, maximum: 20, scale: "log" },
    priorRate: 5,
  },
  shortToSupply: {
    title: "Short to supply",
    meaning: "insulation worn through to a live conductor",
    family: "harness",
    severity: { field: "ohms", unit: "Ω", minimum: 0.01, maximum: 20, scale: "log" },
    priorRate: 2,
  },
  shortBetween: {
    title: "Short between conductors",
    meaning: "two conductors touch",
    family: "harness",
    severity: { field: "ohms", unit: "Ω", minimum: 0.01, maximum: 50, scale: "log" },
    priorRate: 2,
  },
  leak: {
    title: "Leak between conductors",
    meaning: "dirt or damp insulation passes a little current",
    family: "harness",
    severity: { field: "ohms", unit: "Ω", minimum: 500, maximum: 10000000, scale: "log" },
    priorRate: 3,
  },
  chafed: {
    title: "Chafed conductor",
    meaning: "worn through to the body somewhere along its length",
    family: "harness",
    severity: { field: "ohms", unit: "Ω", minimum: 0.02, maximum: 50, scale: "log" },
    priorRate: 3,
  },
  accessory: {
    title: "Owner-added accessory",
    meaning: "something wired in by the owner",
    family: "harness",
    severity: { field: "watts", unit: "W", minimum: 1, maximum: 150, scale: "log" },
    priorRate: 2,
  },
  fuseBlown: {
    title: "Fuse blown",
    meaning: "opened for no lasting reason: a new one holds",
    family: "fuse",
    priorRate: 6,
  },
  fuseMissing: { title: "Fuse missing", meaning: "nobody put it back", family: "fuse", priorRate: 2 },
  fuseWrongRating: {
    title: "Wrong fuse",
    meaning: "a fuse of another rating is fitted",
    family: "fuse",
    severity: { field: "ratingAmps", unit: "A", minimum: 1, maximum: 80, scale: "log" },
    priorRate: 2,
  },
  coilOpen: { title: "Relay coil open", meaning: "the coil wire has parted", family: "relay", priorRate: 3 },
  contactWelded: {
    title: "Relay contact welded",
    meaning: "the contact no longer opens",
    family: "relay",
    priorRate: 3,
  },
  contactResistive: {
    title: "Relay contact burnt",
    meaning: "the contact has grown resistance",
    family: "relay",
    severity: { field: "ohms", unit: "Ω", minimum: 0.05, maximum: 20, scale: "log" },
    priorRate: 4,
  },
  diodeReversed: {
    title: "Relay diode reversed",
    meaning: "a relay with its diode the wrong way round",
    family: "relay",
    priorRate: 1,
  },
  lampOpen: { title: "Filament open", meaning: "the lamp has burnt out", family: "lamp", priorRate: 12 },
  crossFilament: {
    title: "Filaments touching",
    meaning: "both filaments of one bulb are joined",
    family: "lamp",
    severity: { field: "ohms", unit: "Ω", minimum: 0.01, maximum: 5, scale: "log" },
    priorRate: 1,
  },
  wrongBulb: {
    title: "Wrong bulb",
    meaning: "a bulb of another wattage is fitted",
    family: "lamp",
    severity: { field: "watts", unit: "W", minimum: 1, maximum: 100, scale: "log" },
    priorRate: 2,
  },
  sensorOffset: {
    title: "Sensor reads off",
    meaning: "its output is wrong by a constant voltage",
    family: "sensor",
    severity: { field: "volts", unit: "V", minimum: -1.5, maximum: 1.5, scale: "linear" },
    priorRate: 4,
  },
  sensorStuck: {
    title: "Sensor stuck",
    meaning: "its output stands still",
    family: "sensor",
    severity: { field: "volts", unit: "V", minimum: 0, maximum: 5, scale: "linear" },
    priorRate: 3,
  },
  sensorShift: {
    title: "Sensor reads wrong",
    meaning: "it reports another quantity than it has",
    family: "sensor",
    severity: { field: "by", unit: "", minimum: -60, maximum: 60, scale: "linear" },
    priorRate: 4,
  },
  internalOpen: {
    title: "Open inside",
    meaning: "the part is open behind its terminal",
    family: "part",
    priorRate: 4,
  },
  internalShort: {
    title: "Short inside",
    meaning: "two terminals are joined inside the part",
    family: "part",
    severity: { field: "ohms", unit: "Ω", minimum: 0.05, maximum: 200, scale: "log" },
    priorRate: 3,
  },
  motorHot: {
    title: "Motor hot",
    meaning: "not a defect: it has worked hard",
    family: "motor",
    severity: { field: "celsius", unit: "°C", minimum: 80, maximum: 180, scale: "linear" },
    priorRate: 2,
  },
  motorWorn: {
    title: "Worn brushes",
    meaning: "resistance in the motor",
    family: "motor",
    severity: { field: "ohms", unit: "Ω", minimum: 0.02, maximum: 5, scale: "log" },
    priorRate: 5,
  },
  motorSeized: { title: "Motor seized", meaning: "the rotor does not turn", family: "motor", priorRate: 3 },
  motorShorted: {
    title: "Shorted winding",
    meaning: "turns are joined",
    family: "motor",
    severity: { field: "share", unit: "", minimum: 0.2, maximum: 0.9, scale: "linear" },
    priorRate: 2,
  },
  couplingBroken: {
    title: "Broken coupling",
    meaning: "the motor turns, the gear does not",
    family: "motor",
    priorRate: 1,
  },
  weakBattery: {
    title: "Weak battery",
    meaning: "discharged or worn",
    family: "supply",
    severity: { field: "stateOfCharge", unit: "", minimum: 0.05, maximum: 0.6, scale: "linear" },
    priorRate: 10,
  },
  beltSlips: {
    title: "Belt slips or is missing",
    meaning: "the alternator is not turned as it should be",
    family: "supply",
    severity: { field: "share", unit: "", minimum: 0, maximum: 0.9, scale: "linear" },
    priorRate: 3,
  },
  alternatorDiodeOpen: {
    title: "Alternator diode open",
    meaning: "one rectifier diode does not conduct",
    family: "supply",
    priorRate: 2,
  },
  regulatorOff: {
    title: "Regulator off its set-point",
    meaning: "it charges too high or too low",
    family: "supply",
    severity: { field: "volts", unit: "V", minimum: -2, maximum: 2.5, scale: "linear" },
    priorRate: 2,
  },
  driverDead: {
    title: "Driver dead",
    meaning: "the module's output stage never switches on",
    family: "module",
    priorRate: 2,
  },
  driverLeaking: {
    title: "Driver leaking",
    meaning: "the output stage passes current while it is off",
    family: "module",
    severity: { field: "ohms", unit: "Ω", minimum: 20, maximum: 20000, scale: "log" },
    priorRate: 1,
  },
  scanValueWrong: {
    title: "Scan value wrong",
    meaning: "the tool shows a value that is off; the module works with the true one",
    family: "module",
    severity: { field: "by", unit: "", minimum: -50, maximum: 50, scale: "linear" },
    priorRate: 1,
  },
  scanValueStuck: {
    title: "Scan value stuck",
    meaning: "the tool always shows the same value",
    family: "module",
    severity: { field: "shows", unit: "", minimum: -40, maximum: 200, scale: "linear" },
    priorRate: 1,
  },
  silentNode: {
    title: "Silent control module",
    meaning: "works, but neither talks nor listens",
    family: "bus",
    priorRate: 2,
  },
  staysAwake: {
    title: "Module stays awake",
    meaning: "it never falls asleep",
    family: "module",
    priorRate: 3,
  },
  terminatorMissing: {
    title: "Terminator missing",
    meaning: "a bus end is not terminated",
    family: "bus",
    priorRate: 2,
  },
  terminatorDrifted: {
    title: "Terminator drifted",
    meaning: "a terminator has another resistance",
    family: "bus",
    severity: { field: "ohms", unit: "Ω", minimum: 20, maximum: 1000, scale: "log" },
    priorRate: 1,
  },
  terminatorExtra: {
    title: "Extra terminator",
    meaning: "a further resistor lies across the bus",
    family: "bus",
    severity: { field: "ohms", unit: "Ω", minimum: 20, maximum: 240, scale: "log" },
    priorRate: 1,
  },
};
