import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { entropy } from "../../../packages/evaluation/src/reasoning/entropy";
import { expectedEntropy, expectedGain } from "../../../packages/evaluation/src/reasoning/expected-gain";
import { halfSplit } from "../../../packages/evaluation/src/reasoning/half-split";
import { minimalHittingSets } from "../../../packages/evaluation/src/reasoning/hitting-sets";
import { posterior } from "../../../packages/evaluation/src/reasoning/posterior";
import { expectedRepairCost, repairOrder } from "../../../packages/evaluation/src/reasoning/repair-order";

/**
 * Source: de Kleer and Williams 1987, as in the lecture slides of MIT 16.412J: conflicts and observations. That X is their first
 * probe is from memory.
 * Posterior and entropies: by exact enumeration, each part fails with 0.01 and then gives any of 0 … 39 alike.
 */
describe("polybox", () => {
  const parts = ["M1", "M2", "M3", "A1", "A2"];
  const values = Array.from({ length: 40 }, (_, value) => value);
  const failing = 0.01;

  interface World {
    readonly chance: number;
    readonly failed: string;
    readonly probes: { readonly X: number; readonly Y: number; readonly Z: number };
  }
  /** Every way the box could be that shows F = 10 and G = 12, with its joint chance. */
  const worlds: World[] = [];
  for (let set = 0; set < 32; set++) {
    const bad = parts.map((_, position) => (set & (1 << position)) !== 0);
    const [m1, m2, m3, a1, a2] = bad;
    const prior = bad.reduce((chance, is) => chance * (is ? failing : 1 - failing), 1);
    const emits = (is: boolean | undefined, sound: number) => (is ? values : [sound]);
    for (const X of emits(m1, 6))
      for (const Y of emits(m2, 6))
        for (const Z of emits(m3, 6)) {
          if (!a1 && X + Y !== 10) continue;
          if (!a2 && Y + Z !== 12) continue;
          const free = bad.filter(Boolean).length;
          const failed = parts.filter((_, position) => bad[position]).join("+");
          worlds.push({ chance: prior / 40 ** free, failed, probes: { X, Y, Z } });
        }
  }
  const diagnoses = [...new Set(worlds.map(({ failed }) => failed))];
  const joint = diagnoses.map((failed) =>
    worlds.filter((world) => world.failed === failed).reduce((sum, { chance }) => sum + chance, 0),
  );
  const shares = posterior(
    diagnoses.map(() => 1),
    joint.map(Math.log),
  );
  const share = (failed: string) => shares[diagnoses.indexOf(failed)];

  it("the conflicts give the four minimal diagnoses", () => {
    const sets = minimalHittingSets([
      ["A1", "M1", "M2"],
      ["A1", "A2", "M1", "M3"],
    ]);
    expect(sets).toEqual([["A1"], ["M1"], ["A2", "M2"], ["M2", "M3"]]);
  });

  it("posterior and uncertainty", () => {
    expect(share("M1")).toBeCloseTo(0.496983, 6);
    expect(share("A1")).toBeCloseTo(0.496983, 6);
    expect(share("M1+A1")).toBeCloseTo(0.00502, 6);
    expect(share("M2+A2")).toBeCloseTo(0.000126, 6);
    expect(share("M2+M3")).toBeCloseTo(0.000126, 6);
    expect(entropy(shares)).toBeCloseTo(1.0542, 4);
  });

  it.each([
    ["X", 0.017],
    ["Y", 1.0508],
    ["Z", 1.0523],
  ] as const)("expected uncertainty after probing %s: %f bit", (probe, expected) => {
    const seen = Array.from({ length: 53 }, (_, value) => value);
    const chances = diagnoses.map((failed, index) =>
      seen.map(
        (value) =>
          worlds
            .filter((world) => world.failed === failed && world.probes[probe] === value)
            .reduce((sum, { chance }) => sum + chance, 0) / (joint[index] ?? Number.NaN),
      ),
    );
    expect(expectedEntropy(shares, chances)).toBeCloseTo(expected, 4);
  });
});

/** Source: Jensen, Bayesian Networks and Decision Graphs, the car that will not start; its tables of chances. */
describe("the car that will not start", () => {
  const gauges = { full: [0.39, 0.001], half: [0.6, 0.001], empty: [0.01, 0.998] } as const;
  const states = [true, false].flatMap((fuel) => [true, false].map((clean) => ({ fuel, clean })));
  const weights = states.map(({ fuel, clean }) => (fuel ? 0.98 : 0.02) * (clean ? 0.96 : 0.04));
  const stays = states.map(({ fuel, clean }) => (fuel ? (clean ? 0.01 : 0.99) : 1));
  it.each([
    [null, 0.2932, 0.5806],
    ["full", 0.0011, 0.8041],
    ["half", 0.0007, 0.8043],
    ["empty", 0.9764, 0.058],
  ] as const)("gauge %s: no fuel %f, dirty plugs %f", (gauge, noFuel, dirty) => {
    const shares = posterior(
      weights,
      states.map(({ fuel }, index) =>
        Math.log((stays[index] ?? 0) * (gauge === null ? 1 : gauges[gauge][fuel ? 0 : 1])),
      ),
    );
    const sum = (holds: (state: (typeof states)[number]) => boolean) =>
      states.reduce((total, state, index) => total + (holds(state) ? (shares[index] ?? 0) : 0), 0);
    expect(sum(({ fuel }) => !fuel)).toBeCloseTo(noFuel, 4);
    expect(sum(({ clean }) => !clean)).toBeCloseTo(dirty, 4);
  });
});

/** Source: Kadane and Simon; Heckerman, Breese and Rommelse 1995 for the rule. The example: our enumeration. */
describe("order of repairs", () => {
  const permutations = <Item>(items: readonly Item[]): Item[][] =>
    items.length < 2
      ? [[...items]]
      : items.flatMap((item, index) =>
          permutations(items.filter((_, other) => other !== index)).map((rest) => [item, ...rest]),
        );
  it("five causes: share over cost, 9.65 on average, 31.1 the wrong way round", () => {
    const causes = [
      { name: "corrosion", share: 0.35, cost: 4 },
      { name: "fuse", share: 0.1, cost: 0.5 },
      { name: "sensor", share: 0.3, cost: 6 },
      { name: "open", share: 0.2, cost: 5 },
      { name: "module", share: 0.05, cost: 20 },
    ];
    const order = repairOrder(causes);
    expect(order.map(({ name }) => name)).toEqual(["fuse", "corrosion", "sensor", "open", "module"]);
    expect(expectedRepairCost(order)).toBeCloseTo(9.65, 10);
    const bySharesAlone = [...causes].sort((a, b) => b.share - a.share);
    expect(expectedRepairCost(bySharesAlone)).toBeCloseTo(10.725, 10);
    const costs = permutations(causes).map(expectedRepairCost);
    expect(costs).toHaveLength(120);
    expect(Math.min(...costs)).toBeCloseTo(9.65, 10);
    expect(Math.max(...costs)).toBeCloseTo(31.1, 10);
  });
  it("no order of up to six random causes is cheaper", () => {
    const cause = fc.record({
      share: fc.double({ min: 0.01, max: 1, noNaN: true }),
      cost: fc.double({ min: 0.1, max: 50, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(cause, { minLength: 1, maxLength: 6 }), (causes) => {
        const best = Math.min(...permutations(causes).map(expectedRepairCost));
        expect(expectedRepairCost(repairOrder(causes))).toBeLessThanOrEqual(best * (1 + 1e-12));
      }),
      { numRuns: 60 },
    );
  });
});

/** Closed forms. */
describe("uncertainty and halving", () => {
  it("{.5, .25, .25} is 1.5 bit; splitting off the half gains 1, a quarter .8113", () => {
    const shares = [0.5, 0.25, 0.25];
    expect(entropy(shares)).toBeCloseTo(1.5, 12);
    const splitting = (index: number) => shares.map((_, place) => (place === index ? [1, 0] : [0, 1]));
    expect(expectedGain(shares, splitting(0))).toBeCloseTo(1, 12);
    expect(expectedGain(shares, splitting(1))).toBeCloseTo(0.8113, 4);
  });
  it.each([1, 2, 3, 7, 8, 13, 16, 64])("%i equal places in a row take at most ⌈log2 n⌉ tests", (count) => {
    const tests = (from: number, to: number): number[] => {
      if (to - from === 1) return [0];
      const middle = from + halfSplit(Array.from({ length: to - from }, () => 1));
      return [...tests(from, middle), ...tests(middle, to)].map((number) => number + 1);
    };
    const numbers = tests(0, count);
    expect(Math.max(...numbers)).toBe(Math.ceil(Math.log2(count)));
    if (Number.isInteger(Math.log2(count))) expect(Math.min(...numbers)).toBe(Math.log2(count));
  });
});

describe("laws of the posterior", () => {
  const drawn = fc.array(
    fc.tuple(fc.double({ min: 0.001, max: 1, noNaN: true }), fc.double({ min: -50, max: 0, noNaN: true })),
    {
      minLength: 1,
      maxLength: 40,
    },
  );
  it("adds up to one", () => {
    fc.assert(
      fc.property(drawn, (rows) => {
        const shares = posterior(
          rows.map(([weight]) => weight),
          rows.map(([, log]) => log),
        );
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
      }),
    );
  });
  it("what is as likely under all changes nothing; the order does not matter", () => {
    fc.assert(
      fc.property(drawn, fc.double({ min: -30, max: 0, noNaN: true }), (rows, same) => {
        const weights = rows.map(([weight]) => weight);
        const flat = posterior(
          weights,
          weights.map(() => same),
        );
        const total = weights.reduce((sum, weight) => sum + weight, 0);
        const logs = rows.map(([, log]) => log);
        const other = rows.map(([weight]) => -weight);
        const first = posterior(posterior(weights, logs), other);
        const second = posterior(posterior(weights, other), logs);
        for (const [index, weight] of weights.entries()) {
          expect(flat[index]).toBeCloseTo(weight / total, 12);
          expect(first[index]).toBeCloseTo(second[index] ?? Number.NaN, 10);
        }
      }),
    );
  });
  it("the true hypothesis gains on average", () => {
    const row = fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(row, { minLength: 2, maxLength: 6 }), (rows) => {
        const chances = rows.map((one) => {
          const sum = one.reduce((total, value) => total + value, 0);
          return one.map((value) => value / sum);
        });
        const prior = 1 / chances.length;
        for (const [truth, own] of chances.entries()) {
          const expected = own.reduce((sum, chance, outcome) => {
            const shares = posterior(
              chances.map(() => prior),
              chances.map((other) => Math.log(other[outcome] ?? 0)),
            );
            return sum + chance * (shares[truth] ?? 0);
          }, 0);
          expect(expected).toBeGreaterThanOrEqual(prior - 1e-12);
        }
      }),
    );
  });
  it("says so when nothing has weight left", () => {
    expect(() => posterior([1, 1], [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY])).toThrow(RangeError);
  });
});
