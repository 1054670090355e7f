import type { DrawnNumber } from "@probeworthy/evaluation";
import { type Fault, faultTable } from "@probeworthy/vehicle";

export type FaultKind = Fault["kind"];
export const textFields = [
  "at",
  "supply",
  "other",
  "component",
  "connector",
  "conductor",
  "terminal",
  "channel",
  "output",
  "value",
  "filament",
  "first",
  "second",
  "condition",
  "is",
] as const;
export const numberFields = [
  "ohms",
  "volts",
  "celsius",
  "stateOfCharge",
  "internalOhmsFactor",
  "along",
  "watts",
  "ratingAmps",
  "by",
  "share",
  "shows",
  "above",
  "below",
] as const;
export type PlaceFieldName = "at" | "supply" | "other" | "component" | "connector" | "conductor";
export type PartFieldName = "terminal" | "channel" | "output" | "value" | "filament" | "first";
export type OtherFieldName = "other" | "second";
export type NumberFieldName = (typeof numberFields)[number];

export interface FaultFormDefinition {
  readonly title: string;
  readonly places: readonly {
    readonly field: PlaceFieldName;
    readonly label: string;
    /** Field that takes the second half of a place: the terminal, the sensor output. */
    readonly part?: PartFieldName;
    /** Field that takes the second place of a fault between two, as the list has it. */
    readonly other?: OtherFieldName;
  }[];
  /** A state of the car in which the fault shows. */
  readonly condition?: boolean;
  readonly numbers: readonly {
    readonly field: NumberFieldName;
    readonly label: string;
    readonly unit: string;
    readonly hint: string;
    /** What a new fault starts with. */
    readonly usual: DrawnNumber;
  }[];
}

const at = { field: "at", label: "Place" } as const;
const component = { field: "component", label: "Component" } as const;
const shortOhms = {
  field: "ohms",
  label: "Resistance of the short",
  unit: "Ω",
  hint: "A hard short is a few hundredths of an ohm.",
  usual: { from: 0.02, to: 0.3, spread: "log" },
} as const;

/** A kind by its row in the vehicle's own table: its title, its severity, and the usual range of it. */
function byTable(kind: FaultKind, places: FaultFormDefinition["places"]): FaultFormDefinition {
  const { title, meaning, severity } = faultTable[kind];
  const field = numberFields.find((name) => name === severity?.field);
  if (!severity || !field) return { title, places, numbers: [] };
  const { unit, minimum, maximum, scale } = severity;
  const middle = scale === "log" ? Math.sqrt(minimum * maximum) : (minimum + maximum) / 2;
  return {
    title,
    places,
    numbers: [
      {
        field,
        label: "How bad",
        unit: unit || "figure",
        hint: `${meaning[0]?.toUpperCase() ?? ""}${meaning.slice(1)}. Usual: ${minimum} to ${maximum}${unit && ` ${unit}`}.`,
        usual: Number(middle.toPrecision(2)),
      },
    ],
  };
}

const conductor = { field: "conductor", label: "Conductor" } as const;
const connector = { field: "connector", label: "Connector" } as const;
const relay = { field: "component", label: "Relay" } as const;
const motor = { field: "component", label: "Motor" } as const;
const module = { field: "component", label: "Control module" } as const;
const pair = { field: "at", label: "Between", other: "other" } as const;

/** What an author fills in for each kind of fault, in the words of the form. */
export const faultForms: Readonly<Record<FaultKind, FaultFormDefinition>> = {
  open: { title: "Open circuit", places: [at], numbers: [] },
  seriesResistance: {
    title: "Too much resistance",
    places: [at],
    numbers: [
      {
        field: "ohms",
        label: "Resistance",
        unit: "Ω",
        hint: "In a power circuit tenths of an ohm matter, in a signal circuit hundreds.",
        usual: { from: 0.2, to: 0.5, spread: "log" },
      },
    ],
  },
  shortToGround: { title: "Short to ground", places: [at], numbers: [shortOhms] },
  shortToSupply: {
    title: "Short to a supply",
    places: [at, { field: "supply", label: "Supply it touches" }],
    numbers: [shortOhms],
  },
  shortBetween: {
    title: "Two conductors touching",
    places: [at, { field: "other", label: "Other place" }],
    numbers: [shortOhms],
  },
  intermittent: { ...byTable("intermittent", [at]), condition: true },
  leak: byTable("leak", [pair]),
  accessory: byTable("accessory", [pair]),
  chafed: withAlong(byTable("chafed", [conductor])),
  backedOut: byTable("backedOut", [{ field: "at", label: "Cavity" }]),
  spreadTerminal: byTable("spreadTerminal", [{ field: "at", label: "Cavity" }]),
  corroded: byTable("corroded", [connector]),
  wetConnector: byTable("wetConnector", [connector]),
  crossedCavities: byTable("crossedCavities", [
    { field: "connector", label: "Connector and cavities", part: "first", other: "second" },
  ]),
  fuseMissing: byTable("fuseMissing", [component]),
  fuseWrongRating: byTable("fuseWrongRating", [component]),
  coilOpen: byTable("coilOpen", [relay]),
  contactWelded: byTable("contactWelded", [relay]),
  contactResistive: byTable("contactResistive", [relay]),
  diodeReversed: byTable("diodeReversed", [relay]),
  lampOpen: byTable("lampOpen", [{ field: "component", label: "Lamp", part: "filament" }]),
  crossFilament: byTable("crossFilament", [{ field: "component", label: "Lamp" }]),
  wrongBulb: byTable("wrongBulb", [{ field: "component", label: "Lamp" }]),
  sensorShift: byTable("sensorShift", [{ field: "component", label: "Sensor" }]),
  internalShort: byTable("internalShort", [
    { field: "component", label: "Part and terminals", part: "terminal", other: "other" },
  ]),
  motorWorn: byTable("motorWorn", [motor]),
  motorSeized: byTable("motorSeized", [motor]),
  motorShorted: byTable("motorShorted", [motor]),
  couplingBroken: byTable("couplingBroken", [motor]),
  beltSlips: byTable("beltSlips", [{ field: "component", label: "Alternator" }]),
  alternatorDiodeOpen: byTable("alternatorDiodeOpen", [{ field: "component", label: "Alternator" }]),
  regulatorOff: byTable("regulatorOff", [{ field: "component", label: "Alternator" }]),
  driverDead: byTable("driverDead", [{ ...module, part: "output" }]),
  driverLeaking: byTable("driverLeaking", [{ ...module, part: "output" }]),
  scanValueWrong: byTable("scanValueWrong", [{ ...module, part: "value" }]),
  scanValueStuck: byTable("scanValueStuck", [{ ...module, part: "value" }]),
  silentNode: byTable("silentNode", [module]),
  staysAwake: byTable("staysAwake", [module]),
  terminatorMissing: byTable("terminatorMissing", [component]),
  terminatorDrifted: byTable("terminatorDrifted", [component]),
  terminatorExtra: byTable("terminatorExtra", [pair]),
  fuseBlown: { title: "Fuse open, nothing behind it", places: [component], numbers: [] },
  sensorOffset: {
    title: "Sensor output off",
    places: [{ field: "component", label: "Sensor output", part: "channel" }],
    numbers: [
      {
        field: "volts",
        label: "Off by",
        unit: "V",
        hint: "Positive reads too high.",
        usual: { from: 0.2, to: 0.4, spread: "linear" },
      },
    ],
  },
  sensorStuck: {
    title: "Sensor output stuck",
    places: [{ field: "component", label: "Sensor output", part: "channel" }],
    numbers: [
      { field: "volts", label: "Stuck at", unit: "V", hint: "Whatever the sensor feels.", usual: 2.5 },
    ],
  },
  internalOpen: {
    title: "Open inside a component",
    places: [{ field: "component", label: "Component and terminal", part: "terminal" }],
    numbers: [],
  },
  motorHot: {
    title: "Motor hot: protecting itself, nothing is broken",
    places: [{ field: "component", label: "Motor" }],
    numbers: [
      {
        field: "celsius",
        label: "Winding temperature",
        unit: "°C",
        hint: "Where the module begins to hold current back depends on the vehicle.",
        usual: { from: 115, to: 135, spread: "linear" },
      },
    ],
  },
  weakBattery: {
    title: "Weak battery",
    places: [{ field: "component", label: "Battery" }],
    numbers: [
      {
        field: "stateOfCharge",
        label: "State of charge",
        unit: "0 to 1",
        hint: "1 is full.",
        usual: { from: 0.2, to: 0.4, spread: "linear" },
      },
      {
        field: "internalOhmsFactor",
        label: "Internal resistance",
        unit: "times usual",
        hint: "1 is a good battery, 4 a worn one.",
        usual: { from: 3, to: 5, spread: "linear" },
      },
    ],
  },
};

function withAlong(form: FaultFormDefinition): FaultFormDefinition {
  const along = {
    field: "along",
    label: "Where along it",
    unit: "0 to 1",
    hint: "0 is the end named first, 1 the other.",
    usual: 0.5,
  } as const;
  return { ...form, numbers: [along, ...form.numbers] };
}

export const faultKindNames = Object.keys(faultForms) as FaultKind[];

export const isFaultKind = (kind: unknown): kind is FaultKind =>
  typeof kind === "string" && Object.hasOwn(faultForms, kind);

/** A fault of a scenario with its ranges, in one line. */
export function describeTemplate(template: Readonly<Record<string, unknown>>): string {
  const { kind } = template;
  if (!isFaultKind(kind)) return "a fault of an unknown kind";
  const { title, places, numbers } = faultForms[kind];
  const where = places
    .map(({ field, part, other }) =>
      [template[field], part && template[part], other && template[other]].filter(Boolean).join(" "),
    )
    .join(" and ");
  const howMuch = numbers.map(({ field, unit }) => describeNumber(template[field], unit));
  return [`${title}: ${where}`, ...howMuch].join(", ");
}

function describeNumber(value: unknown, unit: string): string {
  if (typeof value === "object" && value !== null && "from" in value && "to" in value && "spread" in value) {
    return `${String(value.from)} to ${String(value.to)} ${unit}${value.spread === "log" ? " (even over decades)" : ""}`;
  }
  return `${String(value ?? "?")} ${unit}`;
}
