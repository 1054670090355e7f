import type { DrawnNumber } from "@probeworthy/evaluation";
import type { Fault } from "@probeworthy/vehicle";

export type FaultKind = Fault["kind"];
export type PlaceFieldName = "at" | "supply" | "other" | "component";
export type PartFieldName = "terminal" | "channel";
export type NumberFieldName = "ohms" | "volts" | "celsius" | "stateOfCharge" | "internalOhmsFactor";

export interface FaultFormDefinition {
  readonly title: string;
  readonly places: readonly {
    readonly field: PlaceFieldName;
    readonly label: string;
    /** Field that takes the second half of a place: the terminal, the sensor output. */
    readonly part?: PartFieldName;
  }[];
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

export const faultKindNames = Object.keys(faultForms) as FaultKind[];

export const isFaultKind = (kind: unknown): kind is FaultKind =>
  typeof kind === "string" && Object.hasOwn(faultForms, kind);

/** A fault of a scenario with its ranges, in one line. */
export function describeTemplate(template: Readonly<Record<string, unknown>>): string {
  const { kind } = template;
  if (!isFaultKind(kind)) return "a fault of an unknown kind";
  const { title, places, numbers } = faultForms[kind];
  const where = places
    .map(({ field, part }) =>
      [template[field], part === undefined ? "" : template[part]].filter(Boolean).join(" "),
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
