import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CircuitElement } from "./network";
import { operatingPoint } from "./prepare-circuit";
import { kinds } from "./sample-elements";
import { ground, networkOf, networks } from "./testing/arbitrary-network";
import { assertLaw } from "./testing/assert-law";
import { changed, terminalsOf } from "./testing/terminals";

/** What may be wrong with a circuit as such, each element being sound. */
const codes = [
  "missing_ground",
  "missing_control",
  "voltage_loop",
  "open_current_source",
  "singular",
  "no_convergence",
];

type Wrong = {
  readonly what: "missing" | "astray" | "ideal" | "open" | "moved";
  readonly picks: readonly number[];
};
const wrongs = fc.record({
  what: fc.constantFrom("missing", "astray", "ideal", "open", "moved"),
  picks: fc.array(fc.nat(), { minLength: 3, maxLength: 3 }),
});

/** A harness put together badly: parts forgotten, leads swapped, left loose or put on one another, ideal sources anywhere. */
function spoil(
  elements: readonly CircuitElement[],
  nodes: readonly string[],
  { what, picks }: Wrong,
  i: number,
) {
  const at = picks[0] % elements.length;
  const terminals = terminalsOf(elements[at]);
  const { field } = terminals[picks[1] % terminals.length];
  const node = nodes[picks[2] % nodes.length];
  const [a, b] = [nodes[picks[0] % nodes.length], nodes[picks[1] % nodes.length]];
  const more: { readonly [W in Wrong["what"]]: () => readonly CircuitElement[] } = {
    missing: () => elements.filter((_, k) => k !== at),
    astray: () => elements.map((e, k) => (k === at ? changed(e, { [field]: node }) : e)),
    moved: () => elements.map((e, k) => (k === at ? changed(e, { [field]: `loose${i}` }) : e)),
    ideal: () => [
      ...elements,
      { kind: "voltageSource", id: `ideal${i}`, positive: a, negative: b, volts: (picks[2] % 3) - 1 },
    ],
    open: () => [...elements, { kind: "currentSource", id: `open${i}`, from: a, to: b, amps: 1e-3 }],
  };
  return more[what]();
}

describe("a circuit put together badly", () => {
  it.each(kinds)(
    "has finite volts and amps, or a reason that names where it fails, with a %s",
    (kind) => {
      assertLaw(
        fc.property(
          networks({ always: kind }),
          fc.array(wrongs, { minLength: 1, maxLength: 8 }),
          (drawn, list) => {
            let elements = drawn.elements;
            for (const [i, wrong] of list.entries()) elements = spoil(elements, drawn.nodes, wrong, i);
            fc.pre(elements.length > 0);
            const result = operatingPoint(networkOf(elements));
            if (!result.ok) {
              const { code, element, node } = result.error;
              expect(codes).toContain(code);
              const names = new Set([
                ...elements.map(({ id }) => id),
                ...elements.flatMap((e) => terminalsOf(e).map((t) => t.node)),
                ground,
              ]);
              expect(names).toContain(element ?? node);
              return;
            }
            for (const element of elements) {
              expect(Number.isFinite(result.value.amps(element.id)), element.id).toBe(true);
              for (const { node } of terminalsOf(element))
                expect(Number.isFinite(result.value.volts(node)), node).toBe(true);
            }
          },
        ),
        { numRuns: 40 },
      );
    },
    60_000,
  );
});

it("a network of curves without a single answer is blamed on the node that has none", () => {
  const result = operatingPoint({
    ground,
    elements: [
      { kind: "voltageSource", id: "g", positive: "n1", negative: ground, volts: 6, ohms: 1 },
      { kind: "diode", id: "d", anode: "n1", cathode: ground },
      { kind: "resistor", id: "r", a: "n2", b: ground, ohms: 1 },
      // Gives back what the resistor takes, whatever the volts.
      {
        kind: "controlledSource",
        id: "x",
        type: "vccs",
        positive: "n2",
        negative: ground,
        controlPositive: "n2",
        controlNegative: ground,
        gain: -1,
      },
    ],
  });
  expect(result).toMatchObject({ ok: false, error: { code: "no_convergence", node: "n2" } });
});
