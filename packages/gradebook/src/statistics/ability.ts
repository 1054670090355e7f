import type { Answer } from "./answers";
import { posteriors } from "./expectation";
import type { ItemParameters } from "./marginal-fit";
import { standardNormal61 } from "./quadrature";
import { type Interval, invalidInput, known, type Statistic, tooFewAttempts, z95 } from "./result";

export interface Ability {
  /** Mean of the posterior, in the unit of the class: 0 its mean, 1 its standard deviation. */
  readonly estimate: number;
  /** Standard deviation of the posterior. */
  readonly standardDeviation: number;
  /** estimate ± 1.96 standard deviations. */
  readonly interval: Interval;
  /** Items answered. */
  readonly answered: number;
}

/**
 * A learner's ability as the expected a posteriori estimate under a standard normal prior, from answers to items whose
 * parameters are known; null is not attempted. Unlike the most likely value it is finite when all answers are right.
 * Needs one answer: with none the estimate is the prior, the same for everybody, and says nothing of the learner. Few
 * answers leave the estimate near the class mean, and the interval says so.
 * Source: R. D. Bock and R. J. Mislevy 1982 (from memory).
 * Errors: `too_few_attempts`, `invalid_input` (not one answer an item, an answer that is not 0, 1 or null, or parameters
 * that are not finite).
 */
export function expectedAbility(
  answers: readonly Answer[],
  items: readonly ItemParameters[],
): Statistic<Ability> {
  if (answers.length !== items.length)
    return invalidInput("answers", `must have ${items.length} entries, one an item`);
  const bad = answers.findIndex((answer) => answer !== null && answer !== 0 && answer !== 1);
  if (bad >= 0) return invalidInput(`answers.${bad}`, "must be 0, 1 or null");
  const wild = items.findIndex(
    ({ discrimination, difficulty }) => !Number.isFinite(discrimination) || !Number.isFinite(difficulty),
  );
  if (wild >= 0) return invalidInput(`items.${wild}`, "must have a finite discrimination and difficulty");
  const answered = answers.filter((answer) => answer !== null).length;
  if (answered === 0) return tooFewAttempts(0, 1);

  const { points } = standardNormal61;
  const parameters = [
    ...items.map(({ discrimination }) => discrimination),
    ...items.map(({ discrimination, difficulty }) => -discrimination * difficulty),
  ];
  const layout = { items: items.length, commonSlope: false };
  const [posterior] = posteriors([{ answers, count: 1 }], parameters, layout, standardNormal61);
  const weights = posterior?.weights ?? [];
  const estimate = points.reduce((total, point, index) => total + point * (weights[index] ?? 0), 0);
  const variance = points.reduce(
    (total, point, index) => total + (point - estimate) ** 2 * (weights[index] ?? 0),
    0,
  );
  const standardDeviation = Math.sqrt(variance);
  return known({
    estimate,
    standardDeviation,
    interval: { low: estimate - z95 * standardDeviation, high: estimate + z95 * standardDeviation },
    answered,
  });
}
