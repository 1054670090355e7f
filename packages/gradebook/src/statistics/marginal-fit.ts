import { type AnswerTable, dichotomousItemCount } from "./answers";
import {
  completeDerivatives,
  expectation,
  interceptAt,
  type ParameterLayout,
  parameterCount,
  slopeAt,
} from "./expectation";
import { type Pattern, patternsOf } from "./patterns";
import { standardNormal61 } from "./quadrature";
import { known, type Statistic, tooFewAttempts, unknown } from "./result";
import { at, invertPositiveDefinite, type Matrix, multiply, put, zeros } from "./symmetric";

/** Fewer attempts than this do not carry one slope and a difficulty an item. */
export const attemptsForOneSlope = 30;
/** Fewer attempts than this do not carry a slope of its own for every item. */
export const attemptsForOwnSlopes = 200;

export interface ItemParameters {
  /** Slope a of 1/(1 + e^−a(θ−b)) in logits a unit of ability; no 1.7 in it. */
  readonly discrimination: number;
  /** b, on the scale of ability: mean 0 and standard deviation 1 in this class. High is hard. */
  readonly difficulty: number;
}

export interface FittedItem extends ItemParameters {
  readonly discriminationError: number;
  readonly difficultyError: number;
}

export interface MarginalFit {
  readonly items: readonly FittedItem[];
  readonly commonSlope: boolean;
  /** Natural logarithm of the marginal likelihood at the estimate. */
  readonly logLikelihood: number;
  readonly aic: number;
  /** With the number of attempts as sample size. */
  readonly bic: number;
  readonly attempts: number;
  readonly iterations: number;
}

/**
 * The one-parameter logistic model with a slope all items share. `table` is learners × items, 0, 1 or null for not
 * attempted (taken to be missing at random). Abilities are assumed standard normal.
 * Needs thirty attempts, for the reason given at the conditional Rasch fit; the one slope costs little more.
 * Method, sources and errors as {@link twoParameterFit}.
 */
export function oneParameterFit(table: AnswerTable): Statistic<MarginalFit> {
  return marginalFit(table, true, attemptsForOneSlope);
}

/**
 * The two-parameter logistic model by marginal maximum likelihood: EM over 61 points of ability, standard errors from the
 * observed information. `table` as at {@link oneParameterFit}. If most learners who do well at the rest do badly at an
 * item, its slope is negative. Slopes are turned so that most are positive.
 * Needs two hundred attempts: below that the slopes' standard errors are as large as the differences between items, and
 * estimates run away (common practice, no source); one slope for all is then the honest model.
 * Sources: R. D. Bock and M. Aitkin 1981 (EM), Akaike 1974, Schwarz 1978 (from memory).
 * Errors: `too_few_attempts`, `too_few_items` (three are needed: two items have more parameters than patterns),
 * `no_spread` with the item everybody got right or wrong, `no_finite_estimate`, `no_convergence`, `invalid_input`.
 */
export function twoParameterFit(table: AnswerTable): Statistic<MarginalFit> {
  return marginalFit(table, false, attemptsForOwnSlopes);
}

const roundsOfEm = 40;
const mostIterations = 140;
/** With no slope above this the items have nothing in common, and a difficulty −d/a has no finite place. */
const flattest = 0.02;
/** A slope of twelve turns from 5 % to 95 % within half a unit of ability: no longer an estimate but a wall. */
const steepest = 12;

function marginalFit(table: AnswerTable, commonSlope: boolean, need: number): Statistic<MarginalFit> {
  const counted = dichotomousItemCount(table);
  if (!counted.ok) return counted;
  const layout: ParameterLayout = { items: counted.value, commonSlope };
  const patterns = patternsOf(table);
  const attempts = patterns.reduce((total, { count }) => total + count, 0);
  if (attempts < need) return tooFewAttempts(attempts, need);
  if (layout.items < 3) return unknown({ code: "too_few_items", have: layout.items, need: 3 });
  const start = startingPoint(patterns, layout);
  if (!start.ok) return start;
  const found = climb(patterns, start.value, layout);
  if (!found.ok) return found;
  const { parameters, logLikelihood, iterations } = found.value;
  const covariance = invertPositiveDefinite(observedInformation(patterns, parameters, layout));
  if (covariance === null) return unknown({ code: "no_finite_estimate" });
  const size = parameterCount(layout);
  return known({
    items: describeItems(parameters, covariance, layout),
    commonSlope,
    logLikelihood,
    aic: 2 * size - 2 * logLikelihood,
    bic: size * Math.log(attempts) - 2 * logLikelihood,
    attempts,
    iterations,
  });
}

/** Slopes of one, intercepts from the share of right answers. */
function startingPoint(patterns: readonly Pattern[], layout: ParameterLayout): Statistic<number[]> {
  const parameters = new Array<number>(parameterCount(layout)).fill(1);
  for (let item = 0; item < layout.items; item += 1) {
    let [tried, right] = [0, 0];
    for (const { answers, count } of patterns) {
      if (answers[item] !== null) tried += count;
      if (answers[item] === 1) right += count;
    }
    if (right === 0 || right === tried) return unknown({ code: "no_spread", item });
    parameters[interceptAt(layout, item)] = Math.log(right / (tried - right));
  }
  return known(parameters);
}

/**
 * EM with one Newton step a round brings any start near the top; from there EM creeps where the answers say little, and
 * Newton's method on the marginal likelihood itself takes over, falling back on EM where the surface is not yet a hilltop.
 */
function climb(patterns: readonly Pattern[], start: readonly number[], layout: ParameterLayout) {
  let here = stateAt(patterns, start, layout);
  for (let iterations = 1; iterations <= mostIterations; iterations += 1) {
    const { parameters, gradient, information, logLikelihood } = here;
    const slopes = parameters.slice(0, layout.commonSlope ? 1 : layout.items).map(Math.abs);
    if (Math.max(...slopes) > steepest || Math.max(...slopes) < flattest) {
      return unknown({ code: "no_finite_estimate" });
    }
    if (Math.max(...gradient.map(Math.abs)) < 1e-6) return known({ parameters, logLikelihood, iterations });
    const inverse =
      (iterations > roundsOfEm
        ? invertPositiveDefinite(observedInformation(patterns, parameters, layout))
        : null) ?? invertPositiveDefinite(information);
    if (inverse === null) return unknown({ code: "no_finite_estimate" });
    const step = multiply(inverse, gradient);
    let share = Math.min(1, 1 / Math.max(...step.map(Math.abs)));
    const stepped = () => {
      const values = parameters.map((value, index) => value + share * (step[index] ?? 0));
      return stateAt(patterns, values, layout);
    };
    here = stepped();
    // A step that overshoots is halved until it climbs, but for what rounding may take away.
    const floor = logLikelihood - 1e-9 * Math.abs(logLikelihood);
    while (share > 1e-6 && !(here.logLikelihood >= floor)) {
      share /= 2;
      here = stepped();
    }
  }
  return unknown({ code: "no_convergence", iterations: mostIterations });
}

/** The marginal log-likelihood, its gradient, and the information of the complete answers. */
function stateAt(patterns: readonly Pattern[], parameters: readonly number[], layout: ParameterLayout) {
  const expected = expectation(patterns, parameters, layout, standardNormal61);
  return {
    parameters,
    ...completeDerivatives(expected, parameters, layout, standardNormal61),
    logLikelihood: expected.logLikelihood,
  };
}

/** Minus the second derivatives of the marginal log-likelihood: central differences of its exact gradient. */
function observedInformation(
  patterns: readonly Pattern[],
  parameters: readonly number[],
  layout: ParameterLayout,
): Matrix {
  const width = 1e-4;
  const columns = parameters.map((_, moved) => {
    const shifted = (by: number) => parameters.map((value, index) => (index === moved ? value + by : value));
    const above = stateAt(patterns, shifted(width), layout).gradient;
    const below = stateAt(patterns, shifted(-width), layout).gradient;
    return above.map((value, index) => -(value - (below[index] ?? 0)) / (2 * width));
  });
  const information = zeros(parameters.length);
  for (const [row, entries] of columns.entries()) {
    for (const column of entries.keys())
      put(information, row, column, (at(columns, row, column) + at(columns, column, row)) / 2);
  }
  return information;
}

/** From slope and intercept to discrimination and difficulty b = −d/a, errors by the delta method. */
function describeItems(
  parameters: readonly number[],
  covariance: Matrix,
  layout: ParameterLayout,
): readonly FittedItem[] {
  const slopes = parameters.slice(0, layout.commonSlope ? 1 : layout.items);
  // Ability has no direction of its own: a mirrored solution is the same solution.
  const turn = slopes.filter((slope) => slope < 0).length * 2 > slopes.length ? -1 : 1;
  return Array.from({ length: layout.items }, (_, item) => {
    const [s, d] = [slopeAt(layout, item), interceptAt(layout, item)];
    const slope = (parameters[s] ?? 0) * turn;
    const difficulty = -(parameters[d] ?? 0) / slope;
    // ∂b/∂d = −1/a and ∂b/∂a = −b/a.
    const variance =
      (at(covariance, d, d) +
        2 * difficulty * turn * at(covariance, s, d) +
        difficulty ** 2 * at(covariance, s, s)) /
      slope ** 2;
    return {
      discrimination: slope,
      difficulty,
      discriminationError: Math.sqrt(at(covariance, s, s)),
      difficultyError: Math.sqrt(variance),
    };
  });
}
