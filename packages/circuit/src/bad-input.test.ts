import { describe, expect, it } from "vitest";
import { type Network, operatingPoint, prepareCircuit } from "./index";
import {
  definitionOf,
  type Fields,
  goodValue,
  type Kind,
  kinds,
  makeElement,
  networkOf,
  terminalFields,
} from "./sample-elements";

// Everything here is driven by the table of kinds: a new kind is covered as soon as it stands there.

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
