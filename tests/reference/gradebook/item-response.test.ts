import {
  conditionalRasch,
  expectedAbility,
  oneParameterFit,
  type Statistic,
  twoParameterFit,
} from "@probeworthy/gradebook";
import { describe, expect, it } from "vitest";
import { lsatSection6 } from "./lsat-section-6";

function answerOf<T>(statistic: Statistic<T>): T {
  if (!statistic.ok) throw new Error(JSON.stringify(statistic.error));
  return statistic.value;
}

function expectWithin(found: readonly number[], wanted: readonly number[], tolerance: number) {
  expect(found.length).toBe(wanted.length);
  for (const [index, value] of found.entries()) {
    expect(Math.abs(value - (wanted[index] ?? Number.NaN)), `entry ${index}: ${value}`).toBeLessThanOrEqual(
      tolerance,
    );
  }
}

describe("section 6 of the Law School Admission Test, 1000 × 5", () => {
  // Source: printed output of the R package ltm 1.x, `ltm(LSAT ~ z1)`. Its optimiser stops a little short of the top (the
  // likelihood is flat there: the standard error of the fifth difficulty is 0.87), hence 0.003 for the estimates.
  it("two parameters: difficulties, discriminations, log-likelihood, AIC, BIC", () => {
    const fit = answerOf(twoParameterFit(lsatSection6));
    const difficulties = fit.items.map(({ difficulty }) => difficulty);
    const discriminations = fit.items.map(({ discrimination }) => discrimination);
    expectWithin([fit.logLikelihood, fit.aic, fit.bic], [-2466.653, 4953.307, 5002.384], 0.002);
    expectWithin(difficulties, [-3.3597, -1.3696, -0.2799, -1.8659, -3.1236], 0.003);
    expectWithin(discriminations, [0.8254, 0.7229, 0.8905, 0.6886, 0.6575], 0.003);
    // Standard errors as ltm prints them (from memory).
    expectWithin(
      fit.items.map(({ difficultyError }) => difficultyError),
      [0.8669, 0.3073, 0.0997, 0.4341, 0.87],
      0.002,
    );
    expectWithin(
      fit.items.map(({ discriminationError }) => discriminationError),
      [0.2581, 0.1867, 0.2326, 0.1852, 0.21],
      0.002,
    );
    // The same by an independent program: direct maximisation of the likelihood over 601 points with SciPy's BFGS.
    expectWithin([fit.logLikelihood], [-2466.6533774], 1e-6);
    expectWithin(difficulties, [-3.35881, -1.370058, -0.279666, -1.866381, -3.125911], 2e-5);
    expectWithin(discriminations, [0.82566, 0.722744, 0.890874, 0.688368, 0.656855], 2e-5);
  });

  // Difficulties and log-likelihood computed by an independent program with the same 61 points; the slope is also what
  // ltm prints (from memory).
  it("one common slope: slope, difficulties, log-likelihood", () => {
    const fit = answerOf(oneParameterFit(lsatSection6));
    expectWithin([fit.logLikelihood], [-2466.938], 0.001);
    expectWithin(
      fit.items.map(({ discrimination }) => discrimination),
      new Array(5).fill(0.7551),
      0.0002,
    );
    expectWithin(
      fit.items.map(({ difficulty }) => difficulty),
      [-3.6153, -1.3224, -0.3176, -1.7301, -2.7802],
      0.0005,
    );
    // Standard errors as ltm prints them (from memory).
    expectWithin(
      fit.items.map(({ difficultyError }) => difficultyError),
      [0.3266, 0.1422, 0.0977, 0.1691, 0.251],
      0.002,
    );
    expectWithin([fit.items[0]?.discriminationError ?? Number.NaN], [0.0694], 0.001);
  });

  // Computed by an independent program.
  it("abilities of learners with 0 … 5 right under the common slope", () => {
    const { items } = answerOf(oneParameterFit(lsatSection6));
    const abilities = [0, 1, 2, 3, 4, 5].map((right) =>
      answerOf(
        expectedAbility(
          items.map((_, item) => (item < right ? 1 : 0)),
          items,
        ),
      ),
    );
    expectWithin(
      abilities.map(({ estimate }) => estimate),
      [-1.9101, -1.4288, -0.9406, -0.4387, 0.0835, 0.6322],
      0.0005,
    );
    expectWithin(
      abilities.map(({ standardDeviation }) => standardDeviation),
      [0.7973, 0.8003, 0.8088, 0.8226, 0.8413, 0.864],
      0.0005,
    );
  });

  // Computed by an independent program (R package eRm 1.0-2, `RM`).
  it("conditional Rasch: easiness and conditional log-likelihood", () => {
    const fit = answerOf(conditionalRasch(lsatSection6));
    expectWithin(
      fit.items.map(({ easiness }) => easiness),
      [1.2561, -0.4749, -1.236, -0.1684, 0.6232],
      0.0001,
    );
    expectWithin([fit.conditionalLogLikelihood], [-1091.57], 0.01);
    expect([fit.attempts, fit.informative]).toEqual([1000, 1000 - 3 - 298]);
  });
});

describe("recovery of known parameters", () => {
  const seed = 20261125;

  it(`1000 simulated learners, 10 items, seed ${seed}`, () => {
    const uniform = uniformFrom(seed);
    const truth = Array.from({ length: 10 }, (_, item) => ({
      discrimination: 0.8 + 0.1 * item,
      difficulty: -1.35 + 0.3 * ((item * 3) % 10),
    }));
    const table = Array.from({ length: 1000 }, () => {
      const ability = Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
      return truth.map(({ discrimination, difficulty }): 0 | 1 =>
        uniform() < 1 / (1 + Math.exp(-discrimination * (ability - difficulty))) ? 1 : 0,
      );
    });
    const fit = answerOf(twoParameterFit(table));
    const misses = fit.items.flatMap((item, index) => [
      (item.discrimination - (truth[index]?.discrimination ?? Number.NaN)) / item.discriminationError,
      (item.difficulty - (truth[index]?.difficulty ?? Number.NaN)) / item.difficultyError,
    ]);
    // Standard errors that are honest leave misses of about one: none far out, and neither all tiny nor all large.
    expect(Math.max(...misses.map(Math.abs)), `seed ${seed}`).toBeLessThan(3.5);
    const meanSquare = misses.reduce((total, miss) => total + miss * miss, 0) / misses.length;
    expect(meanSquare, `seed ${seed}`).toBeGreaterThan(0.4);
    expect(meanSquare, `seed ${seed}`).toBeLessThan(1.9);
  });
});

/** Uniform numbers in [0, 1) from a 32-bit linear congruential generator (constants: Numerical Recipes). */
function uniformFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
