import { describe, expect, it } from "vitest";
import { finish } from "../grade/progress";
import { expectedGain } from "../reasoning/expected-gain";
import type { Picture } from "./car-pictures";
import { nextTest } from "./next-test";
import { expectedBits, outcomesOf } from "./outcomes";
import { groupShares, type Plan, uncertaintyOf } from "./plan";
import { searchFor } from "./reference-path";
import type { PlannedTest } from "./tests";

/** A series circuit of n parts, one of them open, all equally likely: volts are there up to the open one. */
function seriesCircuit(parts: number): Plan {
  const points = Array.from({ length: parts + 1 }, (_, index) => `P${index}`);
  const situation = { title: "Switched on", conditions: {} };
  const pictures: Plan["pictures"] = Object.assign(
    ([fault]: Parameters<Plan["pictures"]>[0]): Picture => ({
      volts: Float64Array.from(points, (_, index) =>
        fault?.kind === "open" && index > Number(fault.at) ? 0 : 12,
      ),
      noticed: "The lamp is dark",
      blownFuses: [],
      modules: new Map(),
    }),
    { solved: () => 0 },
  );
  const tests = points.map(
    (point, index): PlannedTest => ({
      text: `Volts at ${point}`,
      work: { kind: "reading", red: point, black: "ground" },
      columns: [{ kind: "figure", spread: "meter", value: ({ volts }) => volts[index] ?? 0 }],
    }),
  );
  const look: PlannedTest = {
    text: "Look",
    work: { kind: "look" },
    columns: [{ kind: "word", value: ({ noticed }) => noticed }],
  };
  const candidates = Array.from({ length: parts }, (_, index) => ({
    group: `W${index}`,
    cars: [[{ kind: "open", at: String(index) }]] as const,
    prior: 1 / parts,
  }));
  return {
    document: { conditions: [] },
    candidates,
    members: new Map(candidates.map(({ group }, index) => [group, [index]])),
    situations: [situation],
    set: { points, modules: [], tests: [look, ...tests] },
    pictures,
  };
}

describe("the reference strategy on a series circuit", () => {
  it.each([2, 4, 8, 16, 32, 5, 11])("of %d parts halves what is left", (parts) => {
    const plan = seriesCircuit(parts);
    const lengths: number[] = [];
    for (let open = 0; open < parts; open++) {
      const path = finish(searchFor(plan, [{ kind: "open", at: String(open) }]));
      expect(path.topGroup).toBe(`W${open}`);
      expect(path.equivalent).toEqual([]);
      expect(path.topShare).toBeGreaterThan(0.95);
      lengths.push(path.readings);
    }
    expect(Math.max(...lengths)).toBe(Math.ceil(Math.log2(parts)));
  });

  it("takes the middle first", () => {
    const plan = seriesCircuit(16);
    const [situation] = plan.situations;
    if (situation === undefined) throw new Error("one situation");
    const search = {
      shares: Float64Array.from({ length: 16 }, () => 1 / 16),
      situation,
      leads: { red: null, black: null },
      visited: new Set([situation]),
      done: new Set<string>(),
    };
    const next = finish(nextTest(plan, search));
    expect(next?.test.text).toBe("Volts at P8");
    // One of two halves: one bit, less the outlier's share of doubt which the plan does not count.
    expect(next?.bits).toBeCloseTo(1, 9);
    expect(uncertaintyOf(groupShares(plan, search.shares))).toBeCloseTo(4, 12);
  });

  it("expects what the plain formula says", () => {
    const plan = seriesCircuit(5);
    const shares = [0.4, 0.1, 0.2, 0.25, 0.05];
    const shown = plan.candidates.map(({ cars }) =>
      cars.map((car) => plan.pictures(car, { title: "", conditions: {} })),
    );
    for (const column of plan.set.tests.flatMap(({ columns }) => columns)) {
      const outcomes = outcomesOf(column, shown);
      const chances = outcomes.rows.map((row) =>
        Array.from({ length: outcomes.count }, (_, at) => row?.chances[at - row.from] ?? 0),
      );
      const bits = expectedBits(outcomes, plan.members, Float64Array.from(shares));
      expect(bits).toBeCloseTo(expectedGain(shares, chances), 9);
    }
  });

  it("expects nothing of a test that all candidates answer alike", () => {
    const plan = seriesCircuit(6);
    const shown = plan.candidates.map(({ cars }) =>
      cars.map((car) => plan.pictures(car, plan.situations[0]!)),
    );
    const shares = Float64Array.from({ length: 6 }, () => 1 / 6);
    const [look, supply] = plan.set.tests.flatMap(({ columns }) => columns);
    for (const column of [look!, supply!]) {
      expect(expectedBits(outcomesOf(column, shown), plan.members, shares)).toBeCloseTo(0, 12);
    }
  });
});
