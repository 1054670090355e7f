import type { ElementDefinition } from "./elements/definition";
import { definitions } from "./elements/registry";
import type { CircuitElement, Network } from "./network";

// For tests that are driven by the table of kinds: an element of every kind, made of what its definition asks for.

export type Fields = Readonly<Record<string, unknown>>;
export type Kind = CircuitElement["kind"];

export const kinds = Object.keys(definitions) as Kind[];
export const definitionOf = (kind: Kind) => definitions[kind] as unknown as ElementDefinition<CircuitElement>;

/** What no range of one number says, for the kinds that need it. */
const choices: Partial<Record<Kind, Fields>> = {
  driver: { type: "pushPull" },
  controlledSource: { type: "vcvs", controlPositive: "n2", controlNegative: "0" },
  thermistor: { platinumOhms: 100 },
  fuse: { type: "C" },
  switchingPtc: { coldOhms: 10, switchCelsius: 120 },
};
const plausible: readonly unknown[] = [
  1,
  12,
  0.5,
  100,
  true,
  [
    [0, 0],
    [1, 1],
  ],
];

/** A value that the field takes. */
export function goodValue(kind: Kind, field: string): unknown {
  const rule = definitionOf(kind).fields[field];
  const value = plausible.find((candidate) => rule?.test(candidate));
  if (value === undefined) throw new Error(`No plausible ${field} of a ${kind}; add one to the list.`);
  return value;
}

/** Names of the fields that hold a kind's nodes: whatever `terminals` asks for that is not a field with a range. */
export function terminalFields(kind: Kind): readonly string[] {
  const { fields, terminals } = definitionOf(kind);
  const asked = new Set<string>();
  const element = new Proxy({} as CircuitElement, {
    get(_target, name) {
      if (typeof name !== "string" || name in fields) return undefined;
      asked.add(name);
      return name;
    },
  });
  const nodes = new Set<string>(terminals(element));
  return [...asked].filter((name) => nodes.has(name));
}

/** An element with nothing but what it must have, from n1 to ground and on. */
export function makeElement(kind: Kind, id = "E1"): Fields {
  const required = definitionOf(kind).required.map((field) => [field, goodValue(kind, field)]);
  const nodes = terminalFields(kind).map((field, i) => [field, ["n1", "0", "n2", "n3"][i % 4]]);
  return { kind, id, ...Object.fromEntries(nodes), ...Object.fromEntries(required), ...choices[kind] };
}

const around: readonly Fields[] = [
  { kind: "voltageSource", id: "supply", positive: "n1", negative: "0", volts: 12, ohms: 0.1 },
  ...["n2", "n3"].map((node) => ({ kind: "resistor", id: `r${node}`, a: node, b: "0", ohms: 1e4 })),
];
export const networkOf = (...elements: readonly unknown[]) =>
  ({ ground: "0", elements: [...around, ...elements] }) as unknown as Network;
