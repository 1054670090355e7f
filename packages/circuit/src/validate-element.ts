import type { CircuitElement, NodeName } from "./network";
import { fail, type Result, succeed } from "./result";

/** What a numeric field may hold. */
type Rule = { readonly test: (value: number) => boolean; readonly says: string };

const finite: Rule = { test: Number.isFinite, says: "a finite number" };
const positive: Rule = { test: (x) => Number.isFinite(x) && x > 0, says: "a finite number above 0" };
const notNegative: Rule = { test: (x) => Number.isFinite(x) && x >= 0, says: "a finite number, 0 or more" };
const fraction: Rule = { test: (x) => x > 0 && x < 1, says: "a number between 0 and 1, both excluded" };
const celsius: Rule = {
  test: (x) => Number.isFinite(x) && x > -273.15,
  says: "a finite temperature above −273.15",
};

/** Numeric fields by element kind; `closed` of a switch is the only field that is not a number. */
const rules: Readonly<Record<CircuitElement["kind"], Readonly<Record<string, Rule>>>> = {
  resistor: { ohms: positive },
  voltageSource: { volts: finite, ohms: positive },
  currentSource: { amps: finite },
  diode: {
    saturationAmps: positive,
    emission: positive,
    celsius,
    seriesOhms: positive,
    breakdownVolts: positive,
    breakdownAmps: positive,
    breakdownEmission: positive,
  },
  switch: { closedOhms: positive, openOhms: positive },
  filament: { ratedVolts: positive, ratedWatts: positive, exponent: fraction, coldRatio: fraction },
  regulator: {
    volts: positive,
    limitAmps: positive,
    dropoutVolts: notNegative,
    quiescentAmps: notNegative,
    outputOhms: positive,
  },
  controlledSource: { gain: finite },
};

const required: Readonly<Record<CircuitElement["kind"], readonly string[]>> = {
  resistor: ["ohms"],
  voltageSource: ["volts"],
  currentSource: ["amps"],
  diode: [],
  switch: [],
  filament: ["ratedVolts", "ratedWatts"],
  regulator: ["volts", "limitAmps"],
  controlledSource: ["gain"],
};

/** The nodes that carry this element's current, in the order its kind names them. */
export function terminalsOf(element: CircuitElement): readonly NodeName[] {
  switch (element.kind) {
    case "resistor":
    case "switch":
    case "filament":
      return [element.a, element.b];
    case "voltageSource":
    case "controlledSource":
      return [element.positive, element.negative];
    case "currentSource":
      return [element.from, element.to];
    case "diode":
      return [element.anode, element.cathode];
    case "regulator":
      return [element.input, element.output, element.reference];
  }
}

/** True when the element's kind has this changeable field. */
export function hasField(element: CircuitElement, field: string): boolean {
  return field in rules[element.kind] || (element.kind === "switch" && field === "closed");
}

/** Checks one element by itself: names present, every number within its range. */
export function validateElement(element: CircuitElement): Result<void> {
  const { id, kind } = element;
  if (typeof id !== "string" || id === "") return fail("invalid_element", `A ${kind} has no id.`);
  if (!(kind in rules)) return fail("invalid_element", `"${id}" is of an unknown kind.`, { element: id });
  for (const node of terminalsOf(element)) {
    if (typeof node !== "string" || node === "") {
      return fail("invalid_element", `A terminal of "${id}" names no node.`, { element: id });
    }
  }
  for (const field of Object.keys(rules[kind])) {
    const valid = validateField(element, field);
    if (!valid.ok) return valid;
  }
  return kind === "switch" ? validateField(element, "closed") : succeed(undefined);
}

/** Checks one changeable field. */
export function validateField(element: CircuitElement, field: string): Result<void> {
  const { id, kind } = element;
  const value: unknown = (element as unknown as Readonly<Record<string, unknown>>)[field];
  const rule = rules[kind][field];
  if (rule === undefined) {
    if (typeof value === "boolean") return succeed(undefined);
    const message = `"${id}": ${field} must be true or false.`;
    return fail("invalid_element", message, { element: id, field });
  }
  if (value === undefined && !required[kind].includes(field)) return succeed(undefined);
  if (typeof value === "number" && rule.test(value)) return succeed(undefined);
  const message = `"${id}": ${field} must be ${rule.says}, not ${String(value)}.`;
  return fail("invalid_element", message, { element: id, field });
}
