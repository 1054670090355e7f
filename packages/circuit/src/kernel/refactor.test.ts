import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CircuitElement } from "../network";
import { prepareSolver } from "../prepare-circuit";
import { orderByLevel } from "./level-order";
import { factorise, requireFactor } from "./newton-system";
import { createRankQueue } from "./rank-queue";
import { analyse } from "./symbolic";

const name = (i: number) => (i === 0 ? "0" : `n${i}`);
const ohms = fc.double({ min: -3, max: 7, noNaN: true }).map((decade) => 10 ** decade);

/** A tree of resistances with chords, diodes and a source whose current is an unknown. */
const networks = fc
  .array(fc.tuple(fc.nat(), ohms, fc.nat(), fc.boolean()), { minLength: 3, maxLength: 25 })
  .map((rows): CircuitElement[] => [
    { kind: "voltageSource", id: "v", positive: "n1", negative: "0", volts: 12 },
    ...rows.flatMap(([parent, value, other, isDiode], k): CircuitElement[] => {
      const node = name(k + 1);
      const chord = name(other % (k + 2));
      return [
        { kind: "resistor", id: `t${k}`, a: name(parent % (k + 1)), b: node, ohms: value },
        isDiode
          ? { kind: "diode", id: `x${k}`, anode: node, cathode: chord }
          : { kind: "resistor", id: `x${k}`, a: node, b: chord, ohms: value * 3 },
      ];
    }),
  ]);

function solved(elements: readonly CircuitElement[]) {
  const solver = prepareSolver({ ground: "0", elements }, false);
  if (!solver.ok) throw new Error(solver.error.message);
  const point = solver.value.solve();
  if (!point.ok) throw new Error(point.error.message);
  return solver.value;
}

describe("refactorisation", () => {
  it("computes again what a change reaches, to the very bits of computing all", () => {
    fc.assert(
      fc.property(
        networks,
        fc.array(fc.tuple(fc.nat(), ohms), { minLength: 1, maxLength: 6 }),
        (elements, changes) => {
          const { system, set } = solved(elements);
          const count = elements.filter(({ id }) => id.startsWith("t")).length;
          for (const [k, value] of changes) set(`t${k % count}`, { ohms: value });
          expect(factorise(system)).toBe(-1);
          const factor = requireFactor(system);
          const quick = factor.lu.slice();
          system.x.stale.fill(1);
          expect(factorise(system)).toBe(-1);
          expect(quick).toEqual(factor.lu);
        },
      ),
    );
  });

  it("leaves rows alone that a change does not reach", () => {
    // Two stars that share the ground only.
    const star = (hub: string): CircuitElement[] => [
      { kind: "voltageSource", id: `v${hub}`, positive: hub, negative: "0", volts: 12, ohms: 0.01 },
      ...[1, 2, 3].map(
        (k): CircuitElement => ({ kind: "resistor", id: `r${hub}${k}`, a: hub, b: `${hub}${k}`, ohms: k }),
      ),
      ...[1, 2, 3].map(
        (k): CircuitElement => ({
          kind: "resistor",
          id: `l${hub}${k}`,
          a: `${hub}${k}`,
          b: "0",
          ohms: 10 * k,
        }),
      ),
    ];
    const { system, set } = solved([...star("p"), ...star("q")]);
    const before = system.tally.operations;
    set("rp1", { ohms: 2 });
    factorise(system);
    const part = system.tally.operations - before;
    system.x.stale.fill(1);
    factorise(system);
    const whole = system.tally.operations - before - part;
    expect(part).toBeGreaterThan(0);
    expect(part).toBeLessThan(whole / 2);
  });
});

describe("order by level", () => {
  it("makes no other fill and comes after everything it depends on", () => {
    fc.assert(
      fc.property(networks, (elements) => {
        const { system } = solved(elements);
        const { symbolic } = requireFactor(system);
        const again = analyse(system.pattern, orderByLevel(symbolic));
        expect(again.lowerColumn.length).toBe(symbolic.lowerColumn.length);
        expect(again.luLength).toBe(symbolic.luLength);
        expect([...again.order.rows].sort((a, b) => a - b)).toEqual([...symbolic.order.rows.keys()]);
      }),
    );
  });
});

describe("rank queue", () => {
  it("gives back what was put in, smallest first", () => {
    fc.assert(
      fc.property(fc.array(fc.nat()), (ranks) => {
        const queue = createRankQueue();
        for (const rank of ranks) queue.push(rank);
        expect(ranks.map(() => queue.pop())).toEqual([...ranks].sort((a, b) => a - b));
        expect(queue.pop()).toBe(-1);
      }),
    );
  });
});
