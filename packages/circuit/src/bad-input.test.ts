import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ElementDefinition } from "./elements/definition";
import { definitions } from "./elements/registry";
import { type CircuitElement, type Network, operatingPoint, prepareCircuit } from "./index";

// Everything here is driven by the table of kinds: a new kind is covered as soon as it stands there.

type Fields = Readonly<Record<string, unknown>>;
type Kind = CircuitElement["kind"];

const kinds = Object.keys(definitions) as Kind[];
const definitionOf = (kind: Kind) => definitions[kind] as unknown as ElementDefinition<CircuitElement>;

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
function goodValue(kind: Kind, field: string): unknown {
  const rule = definitionOf(kind).fields[field];
  const value = plausible.find((candidate) => rule?.test(candidate));
  if (value === undefined) throw new Error(`No plausible ${field} of a ${kind}; add one to the list.`);
  return value;
}

/** Names of the fields that hold a kind's nodes: whatever `terminals` asks for that is not a field with a range. */
function terminalFields(kind: Kind): readonly string[] {
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
function makeElement(kind: Kind, id = "E1"): Fields {
  const required = definitionOf(kind).required.map((field) => [field, goodValue(kind, field)]);
  const nodes = terminalFields(kind).map((field, i) => [field, ["n1", "0", "n2", "n3"][i % 4]]);
  return { kind, id, ...Object.fromEntries(nodes), ...Object.fromEntries(required), ...choices[kind] };
}

const around: readonly Fields[] = [
  { kind: "voltageSource", id: "supply", positive: "n1", negative: "0", volts: 12, ohms: 0.1 },
  ...["n2", "n3"].map((node) => ({ kind: "resistor", id: `r${node}`, a: node, b: "0", ohms: 1e4 })),
];
const networkOf = (...elements: readonly unknown[]) =>
  ({ ground: "0", elements: [...around, ...elements] }) as unknown as Network;

const errorOf = (network: Network) => {
  const result = operatingPoint(network);
  if (result.ok) throw new Error(`An error was expected of ${JSON.stringify(network.elements.at(-1))}.`);
  return result.error;
};

const cases = kinds.flatMap((kind) =>
  Object.keys(definitionOf(kind).fields).map((field) => [kind, field] as const),
);
const valueText = (value: unknown) => (typeof value === "number" ? String(value) : JSON.stringify(value));

/** Values that no field of its type takes, whatever its range. */
function junkFor(kind: Kind, field: string): readonly unknown[] {
  const wrong: readonly unknown[] = [
    Number.NaN,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    "12",
    "",
    null,
    {},
    { toString: 1 },
  ];
  const good = goodValue(kind, field);
  if (typeof good === "number") return [...wrong, true, [1]];
  if (typeof good === "boolean") return [...wrong, 0, 1, "true"];
  return [...wrong, 5, true, []];
}

describe("every kind of element", () => {
  it.each(kinds)("%s is accepted with what it must have, and solved", (kind) => {
    const result = operatingPoint(networkOf(makeElement(kind)));
    if (!result.ok) throw new Error(result.error.message);
    expect(Number.isFinite(result.value.amps("E1"))).toBe(true);
    expect(terminalFields(kind).length).toBeGreaterThanOrEqual(2);
  });

  it.each(kinds)("%s is refused when it lacks what it must have", (kind) => {
    for (const field of definitionOf(kind).required) {
      const { [field]: _, ...rest } = makeElement(kind);
      expect(errorOf(networkOf(rest))).toMatchObject({ code: "invalid_element", element: "E1", field });
    }
  });

  it.each(cases)("%s is refused with junk as its %s, when prepared and when set", (kind, field) => {
    const good = { ...makeElement(kind), [field]: goodValue(kind, field) };
    const circuit = prepareCircuit(networkOf(good));
    for (const junk of junkFor(kind, field)) {
      const expected = { code: "invalid_element", element: "E1", field };
      expect(errorOf(networkOf({ ...good, [field]: junk })), valueText(junk)).toMatchObject(expected);
      if (!circuit.ok) continue;
      const change = circuit.value.set("E1", { [field]: junk });
      expect(change, valueText(junk)).toMatchObject({ ok: false, error: expected });
    }
  });

  it.each(cases.filter(([, field]) => /(ohms|farads|henries|watts|seconds|inertia)$/i.test(field)))(
    "%s is refused with a negative %s",
    (kind, field) => {
      for (const value of [-1, -1e-300]) {
        const error = errorOf(networkOf({ ...makeElement(kind), [field]: value }));
        expect(error).toMatchObject({ code: "invalid_element", element: "E1", field });
      }
    },
  );

  it.each(cases.filter(([, field]) => /^(ohms|farads|henries|ratedWatts|ratedVolts)$/.test(field)))(
    "%s is refused with 0 for its %s",
    (kind, field) => {
      const error = errorOf(networkOf({ ...makeElement(kind), [field]: 0 }));
      expect(error).toMatchObject({ code: "invalid_element", element: "E1", field });
    },
  );

  it.each(kinds)("%s is refused where a terminal names no node", (kind) => {
    for (const terminal of terminalFields(kind)) {
      for (const node of ["", 5, null, {}]) {
        const error = errorOf(networkOf({ ...makeElement(kind), [terminal]: node }));
        expect(error, `${terminal}: ${valueText(node)}`).toMatchObject({
          code: "invalid_element",
          element: "E1",
        });
      }
    }
  });

  it.each(kinds)("%s is refused under a name that is taken, and without one", (kind) => {
    expect(errorOf(networkOf(makeElement(kind), makeElement(kind)))).toMatchObject({
      code: "duplicate_id",
      element: "E1",
    });
    for (const id of ["", undefined, 7, null]) {
      expect(errorOf(networkOf({ ...makeElement(kind), id }))).toMatchObject({ code: "invalid_element" });
    }
  });

  it.each(kinds)("%s is refused where nothing touches the ground", (kind) => {
    const { elements } = networkOf(makeElement(kind));
    expect(errorOf({ ground: "chassis", elements })).toMatchObject({
      code: "missing_ground",
      node: "chassis",
    });
  });

  it.each(kinds)("%s refuses to change a field that it does not have", (kind) => {
    const circuit = prepareCircuit(networkOf(makeElement(kind)));
    if (!circuit.ok) throw new Error(circuit.error.message);
    for (const field of ["id", "kind", "colour", "__proto__", "constructor", ...terminalFields(kind)]) {
      const change = JSON.parse(`{"${field}": 1}`) as Fields;
      expect(circuit.value.set("E1", change), field).toMatchObject({
        ok: false,
        error: { code: "invalid_element", element: "E1", field },
      });
    }
  });
});

describe("what is no element at all", () => {
  it.each([null, undefined, 7, "resistor", [], {}, { kind: "resistor" }, { kind: {}, id: "X" }])(
    "%j is refused",
    (element) => {
      expect(errorOf(networkOf(element)).code).toBe("invalid_element");
    },
  );

  it.each(["magnet", "__proto__", "constructor", "toString", "", undefined, null])(
    "the kind %s is unknown",
    (kind) => {
      expect(errorOf(networkOf({ ...makeElement("resistor"), kind }))).toMatchObject({
        code: "invalid_element",
        element: "E1",
      });
    },
  );

  it.each(["ccvs", "cccs"])("a %s is refused whose control is missing or cannot be sensed", (type) => {
    for (const controlElement of [undefined, "nothing", "D1", 5]) {
      const source = { kind: "controlledSource", id: "E1", type, positive: "n2", negative: "0", gain: 1 };
      const diode = { kind: "diode", id: "D1", anode: "n1", cathode: "0" };
      expect(errorOf(networkOf({ ...source, controlElement }, diode))).toMatchObject({ element: "E1" });
    }
  });

  it("a controlled source of an unknown type, or that listens to no node, is refused", () => {
    const source = makeElement("controlledSource");
    expect(errorOf(networkOf({ ...source, type: "vcxs" }))).toMatchObject({ element: "E1", field: "type" });
    for (const controlPositive of [undefined, "", 5, null])
      expect(errorOf(networkOf({ ...source, controlPositive }))).toMatchObject({ element: "E1" });
  });
});

const codes = [
  "invalid_element",
  "duplicate_id",
  "missing_ground",
  "missing_control",
  "voltage_loop",
  "open_current_source",
  "singular",
  "no_convergence",
];
const limits = { maxIterations: 25, shuntSteps: 4, sourceSteps: 3, stateRounds: 5 };

/** Solved with finite numbers, or refused with a code and an element or node to blame. */
function expectSane(network: Network): void {
  const circuit = prepareCircuit(network);
  const result = circuit.ok ? circuit.value.operatingPoint(limits) : circuit;
  if (!result.ok) {
    expect(codes).toContain(result.error.code);
    expect(result.error.message).not.toBe("");
    return;
  }
  const { value } = result;
  if (!circuit.ok) throw new Error("what is solved has been prepared");
  for (const node of circuit.value.nodes) expect(Number.isFinite(value.volts(node)), node).toBe(true);
  for (const { id } of network.elements) expect(Number.isFinite(value.amps(id)), id).toBe(true);
  expect(Number.isFinite(value.residualAmps)).toBe(true);
}

const fieldNames = [...new Set(kinds.flatMap((kind) => Object.keys(definitionOf(kind).fields)))];
const nodeFields = [...new Set(kinds.flatMap(terminalFields))];
const node = fc.constantFrom("0", "n1", "n2", "n3");

describe("random networks", () => {
  it("of garbage never throw and never answer with anything that is not a number", () => {
    const junk = fc.oneof(
      fc.constantFrom(
        undefined,
        null,
        "",
        "12",
        true,
        false,
        {},
        [],
        [
          [0, 0],
          [1, 1],
        ],
        { toString: 0 },
        0,
        -0,
        1,
      ),
      fc.double(),
      node,
      fc.anything({ withNullPrototype: true, withBigInt: true }),
    );
    const element = fc
      .record({
        kind: fc.oneof({ weight: 20, arbitrary: fc.constantFrom(...kinds) }, { weight: 1, arbitrary: junk }),
        id: fc.oneof(
          { weight: 20, arbitrary: fc.constantFrom("a", "b", "c", "d") },
          { weight: 1, arbitrary: junk },
        ),
        nodes: fc.dictionary(fc.constantFrom(...nodeFields), fc.oneof({ weight: 9, arbitrary: node }, junk), {
          maxKeys: 12,
        }),
        fields: fc.dictionary(fc.constantFrom(...fieldNames, "type"), junk, { maxKeys: 6 }),
      })
      .map(({ kind, id, nodes, fields }) => ({ kind, id, ...nodes, ...fields }));
    const elements = fc.array(fc.oneof({ weight: 30, arbitrary: element }, junk), { maxLength: 6 });
    fc.assert(
      fc.property(elements, fc.oneof({ weight: 9, arbitrary: node }, junk), (list, ground) => {
        expectSane({ ground, elements: list } as unknown as Network);
      }),
      { numRuns: 2000 },
    );
  }, 120_000);

  it("within the ranges, however far apart the numbers, never throw and stay finite", () => {
    const number = fc.oneof(
      fc.constantFrom(0, 1, 12, -12, 25, 1e-12, 1e-6, 1e6, 1e12),
      fc.double({ min: -300, max: 300, noNaN: true }).map((decade) => 10 ** decade),
      fc.double({ min: -9, max: 9, noNaN: true }).map((decade) => -(10 ** decade)),
    );
    const value = fc.oneof(number, number, fc.boolean());
    const element = fc
      .record({
        kind: fc.constantFrom(...kinds),
        nodes: fc.array(node, { minLength: 8, maxLength: 8 }),
        values: fc.array(fc.tuple(fc.nat(), value), { maxLength: 6 }),
      })
      .map(({ kind, nodes, values }) => {
        const made: Record<string, unknown> = { ...makeElement(kind) };
        terminalFields(kind).forEach((field, i) => {
          made[field] = nodes[i];
        });
        const { fields } = definitionOf(kind);
        const names = Object.keys(fields);
        for (const [pick, drawn] of values) {
          const field = names[pick % names.length] ?? "";
          if (fields[field]?.test(drawn)) made[field] = drawn;
        }
        return made;
      });
    fc.assert(
      fc.property(fc.array(element, { minLength: 1, maxLength: 6 }), (list) => {
        expectSane(networkOf(...list.map((made, i) => ({ ...made, id: `E${i}` }))));
      }),
      { numRuns: 1000 },
    );
  }, 120_000);
});
