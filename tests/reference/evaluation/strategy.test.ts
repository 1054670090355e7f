import {
  bandOf,
  bandRatio,
  bandsOf,
  createPlan,
  type Difficulty,
  makeVariant,
  makeVariantInBand,
  referencePath,
} from "@probeworthy/evaluation/server";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import { describe, expect, it } from "vitest";
import { finish } from "../../../packages/evaluation/src/grade/progress";
import { groupOf } from "../../../packages/evaluation/src/grade/repair-group";
import { open, scenarioNamed, work } from "../../support/attempt-bench";

const scenario = scenarioNamed("air-like-a-sigh");
const contextOf = (seed: string) => {
  const variant = makeVariant(scenario, trainingVehicle, seed);
  if (!variant.ok) throw new Error(variant.error.message);
  return { scenario, document: trainingVehicle, variant: variant.value };
};

describe("the reference strategy on the car", () => {
  const plan = createPlan(contextOf("a"));
  const seeds = ["a", "b", "c"];

  it("ends with the true repair group above 0.95, by commands that the bench carries out", {
    timeout: 60_000,
  }, () => {
    for (const seed of seeds) {
      const context = contextOf(seed);
      const path = finish(referencePath(context, plan));
      const truth = groupOf(context.variant.faults, context.variant.normal, trainingVehicle);
      expect([path.topGroup, ...path.equivalent], seed).toContain(truth);
      expect(path.topShare, seed).toBeGreaterThan(0.95);
      const worked = work(open(context), ...path.steps.flatMap(({ commands }) => commands));
      expect(worked.state.elapsedSeconds / 60).toBeCloseTo(path.minutes, 9);
    }
  });

  it("is the same every time", { timeout: 60_000 }, () => {
    const again = () => JSON.stringify(finish(referencePath(contextOf("a"), plan)));
    expect(again()).toBe(again());
    // A table that other variants have filled, and one in another order, give the same path.
    const [first, second] = ["b", "a"].map((seed) => finish(referencePath(contextOf(seed), plan)));
    expect(JSON.stringify(second)).toBe(again());
    expect(first?.steps.length).toBeGreaterThan(0);
  });
});

describe("difficulty bands", () => {
  it("touch, and are as wide as promised", () => {
    for (const minutes of [0.5, 0.64, 0.66, 1, 5, 20, 90]) {
      const { from, to, id } = bandOf(minutes) ?? { from: 0, to: 0, id: -1 };
      expect(to / from).toBeCloseTo(bandRatio, 12);
      expect(minutes).toBeGreaterThanOrEqual(from);
      expect(minutes).toBeLessThan(to);
      expect(bandOf(to)?.id).toBe(id + 1);
    }
    expect(bandOf(0.49)).toBeNull();
  });

  /** Two candidates in one band, one of them at two of its stages; the third takes longer; one cannot be told. */
  const [contact, ground, motor] = scenario.pool.map(({ id }) => id) as [string, string, string];
  const row = (candidate: string, stage: number, minutes: number, diagnosable = true): Difficulty => ({
    candidate,
    stage,
    minutes,
    diagnosable,
  });
  const rows = [
    row(contact, 0, 2),
    row(contact, 1, 2.1),
    row(contact, 2, 9),
    row(ground, 1, 2.05),
    row(ground, 2, 2.05, false),
    row(motor, 0, 9),
  ];
  const band = bandOf(2)?.id ?? -1;

  it("offers the bands a scenario can serve", () => {
    const offered = bandsOf(rows);
    expect(offered.map(({ band: { id }, candidates }) => [id, candidates])).toEqual([
      [band, [contact, ground]],
      [bandOf(9)?.id, [contact, motor]],
    ]);
  });

  it("draws the candidates of a band by their weights", { timeout: 60_000 }, () => {
    const prefix = "chi-square/1/";
    const draws = 240;
    const counts = new Map<string, number>();
    for (let index = 0; index < draws; index++) {
      const variant = makeVariantInBand(scenario, trainingVehicle, `${prefix}${index}`, rows, band);
      if (!variant.ok) throw new Error(variant.error.message);
      const { candidate } = variant.value;
      counts.set(candidate, (counts.get(candidate) ?? 0) + 1);
    }
    const weights = scenario.pool.filter(({ id }) => id === contact || id === ground);
    const total = weights.reduce((sum, { weight }) => sum + weight, 0);
    let statistic = 0;
    for (const { id, weight } of weights) {
      const expected = (draws * weight) / total;
      statistic += ((counts.get(id) ?? 0) - expected) ** 2 / expected;
    }
    expect([...counts.keys()].sort()).toEqual([contact, ground].sort());
    // One degree of freedom, 0.1 % level: 10.828 (chi-square table).
    expect(statistic, `seeds ${prefix}0 to ${prefix}${draws - 1}`).toBeLessThan(10.828);
  });

  it("says when nothing lies in the band", () => {
    const variant = makeVariantInBand(scenario, trainingVehicle, "a", rows, 40);
    expect(variant.ok ? null : variant.error.code).toBe("no_candidate_in_band");
  });
});
