import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Network, prepareCircuit, transient } from "./index";
import { definitionOf, kinds, makeElement, networkOf, terminalFields } from "./sample-elements";

// fast-check prints seed and path of a failing run; give them as { seed, path } to fc.assert to repeat it.

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
/** Whatever the kinds' rules let through. */
const extreme = fc
  .array(element, { minLength: 1, maxLength: 6 })
  .map((list) => networkOf(...list.map((made, i) => ({ ...made, id: `E${i}` }))));

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
    const scrap = fc
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
    const elements = fc.array(fc.oneof({ weight: 30, arbitrary: scrap }, junk), { maxLength: 6 });
    fc.assert(
      fc.property(elements, fc.oneof({ weight: 9, arbitrary: node }, junk), (list, ground) => {
        expectSane({ ground, elements: list } as unknown as Network);
      }),
      { numRuns: 2000 },
    );
  }, 120_000);

  it("within the ranges, however far apart the numbers, never throw and stay finite", () => {
    fc.assert(fc.property(extreme, expectSane), { numRuns: 1000 });
  }, 120_000);

  it("are followed through time alike", () => {
    const options = { untilSeconds: 1e-2, maxSteps: 200, maxIterations: 12, stateRounds: 5 };
    fc.assert(
      fc.property(extreme, (network) => {
        const run = transient(network, options);
        if (!run.ok) {
          expect([...codes, "step_too_short", "step_limit"]).toContain(run.error.code);
          return;
        }
        for (const { id } of network.elements)
          expect(run.value.amps(id).every(Number.isFinite), id).toBe(true);
      }),
      { numRuns: 500 },
    );
  }, 120_000);
});
