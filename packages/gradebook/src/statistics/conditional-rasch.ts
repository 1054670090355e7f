import { dichotomousItemCount, type ScoreTable, totals } from "./answers";
import { sum } from "./moments";
import { known, type Statistic, tooFewAttempts, unknown } from "./result";
import { add, at, invertPositiveDefinite, type Matrix, multiply, put, zeros } from "./symmetric";

/** Fewer informative attempts than this do not steady an item's place on the logit scale. */
export const attemptsForRasch = 30;

export interface RaschItem {
  /** Logits, high is easy; the items of a test sum to zero. Difficulty is the same with the sign turned. */
  readonly easiness: number;
  readonly standardError: number;
}

export interface ConditionalRasch {
  readonly items: readonly RaschItem[];
  /** log P(answers | totals), natural logarithm. */
  readonly conditionalLogLikelihood: number;
  /** Attempts that got some right and some wrong; the others say nothing of the items and are left out. */
  readonly informative: number;
  readonly attempts: number;
}

const mostRounds = 60;

/**
 * Rasch's model, P(right) = 1/(1 + e^−(θ + β)), with the learners' abilities θ conditioned away through their totals, so
 * that nothing is assumed of how able the class is. `table` is learners × items, 0 or 1, no gaps.
 * log L = Σ sᵢβᵢ − Σ n_r·ln γ_r(β), sᵢ right answers to item i, n_r learners with r right, γ_r the elementary symmetric
 * function of order r of e^β; solved by Newton's method, standard errors from the inverse of the information.
 *
 * Needs thirty informative attempts: with thirty an item of middling difficulty is known to about ±1 logit (a rule of
 * thumb due to J. M. Linacre, from memory); with fewer the order of the items is mostly chance.
 * Source: E. B. Andersen 1972; the condition for a finite estimate by G. H. Fischer 1981 (both from memory): however the
 * items are split in two, somebody is right on one of the first part and wrong on one of the second.
 * Errors: `too_few_attempts`, `too_few_items` (two are needed), `no_finite_estimate`, `no_convergence`, `invalid_input`.
 */
export function conditionalRasch(table: ScoreTable): Statistic<ConditionalRasch> {
  const counted = dichotomousItemCount(table);
  if (!counted.ok) return counted;
  const items = counted.value;
  if (items === 1) return unknown({ code: "too_few_items", have: items, need: 2 });
  const scores = totals(table);
  const informative = table.filter((_, row) => (scores[row] ?? 0) > 0 && (scores[row] ?? 0) < items);
  if (informative.length < attemptsForRasch) return tooFewAttempts(informative.length, attemptsForRasch);
  if (!isWellConditioned(informative, items)) return unknown({ code: "no_finite_estimate" });

  const rights = Array.from({ length: items }, (_, item) => sum(informative.map((row) => row[item] ?? 0)));
  const learners = new Array<number>(items + 1).fill(0);
  for (const total of totals(informative)) learners[total] = (learners[total] ?? 0) + 1;

  let easiness = new Array<number>(items).fill(0);
  let now = derivatives(easiness, rights, learners);
  for (let round = 0; round < mostRounds; round += 1) {
    const covariance = centredInverse(now.information);
    if (covariance === null) return unknown({ code: "no_finite_estimate" });
    const step = multiply(covariance, now.gradient);
    if (Math.max(...step.map(Math.abs)) < 1e-10) {
      return known({
        items: easiness.map((value, item) => ({
          easiness: value,
          standardError: Math.sqrt(at(covariance, item, item)),
        })),
        conditionalLogLikelihood: now.logLikelihood,
        informative: informative.length,
        attempts: table.length,
      });
    }
    // The likelihood is concave, so a step that overshoots is halved until it climbs.
    let share = 1;
    let next = { easiness, now };
    do {
      const tried = easiness.map((value, item) => value + share * (step[item] ?? 0));
      next = { easiness: tried, now: derivatives(tried, rights, learners) };
      share /= 2;
    } while (!(next.now.logLikelihood >= now.logLikelihood - 1e-9) && share > 1e-6);
    ({ easiness, now } = next);
  }
  return unknown({ code: "no_convergence", iterations: mostRounds });
}

/** Whether "somebody right on i and wrong on j" leads from every item to every other. */
function isWellConditioned(rows: ScoreTable, items: number): boolean {
  const beats = zeros(items);
  for (const row of rows) {
    for (const [i, right] of row.entries()) {
      for (const [j, other] of row.entries()) if (right === 1 && other === 0) put(beats, i, j, 1);
    }
  }
  const reachesAll = (leads: (from: number, to: number) => boolean) => {
    const seen = new Set([0]);
    for (const from of seen) {
      for (let to = 0; to < items; to += 1) if (leads(from, to)) seen.add(to);
    }
    return seen.size === items;
  };
  return (
    reachesAll((from, to) => at(beats, from, to) === 1) && reachesAll((from, to) => at(beats, to, from) === 1)
  );
}

/** γ_0 … γ_n of the given values: the coefficients of Π(1 + εᵢx). All terms are positive, so nothing cancels. */
export function elementarySymmetric(values: readonly number[]): number[] {
  const gamma = [1];
  for (const value of values) {
    gamma.push(0);
    for (let order = gamma.length - 1; order > 0; order -= 1) {
      gamma[order] = (gamma[order] ?? 0) + value * (gamma[order - 1] ?? 0);
    }
  }
  return gamma;
}

function derivatives(easiness: readonly number[], rights: readonly number[], learners: readonly number[]) {
  const size = easiness.length;
  const odds = easiness.map(Math.exp);
  const gamma = elementarySymmetric(odds);
  const without = (skipped: readonly number[]) =>
    elementarySymmetric(odds.filter((_, item) => !skipped.includes(item)));
  const orders = learners.flatMap((count, order) => (count > 0 ? [{ count, order }] : []));
  const logLikelihood =
    sum(rights.map((right, item) => right * (easiness[item] ?? 0))) -
    sum(orders.map(({ count, order }) => count * Math.log(gamma[order] ?? 0)));

  // P(item right | total r) = εᵢ γ_{r−1} without i / γ_r, and for two items alike with both left out.
  const single = odds.map((odd, item) => {
    const rest = without([item]);
    return learners.map((_, order) => (odd * (rest[order - 1] ?? 0)) / (gamma[order] ?? 1));
  });
  const chance = (item: number, order: number) => single[item]?.[order] ?? 0;
  const gradient = rights.map(
    (right, item) => right - sum(orders.map(({ count, order }) => count * chance(item, order))),
  );
  const information = zeros(size);
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      const rest = i === j ? [] : without([i, j]);
      const bothOdds = (odds[i] ?? 0) * (odds[j] ?? 0);
      const entry = sum(
        orders.map(({ count, order }) => {
          const both = i === j ? chance(i, order) : (bothOdds * (rest[order - 2] ?? 0)) / (gamma[order] ?? 1);
          return count * (both - chance(i, order) * chance(j, order));
        }),
      );
      put(information, i, j, entry);
      put(information, j, i, entry);
    }
  }
  return { logLikelihood, gradient, information };
}

/**
 * The information has no say on a shift of all items together (they sum to zero by convention). Adding c·11ᵀ/n makes it
 * regular, and taking (1/c)·11ᵀ/n off the inverse again leaves the inverse within the items that sum to zero.
 */
function centredInverse(information: Matrix): Matrix | null {
  const size = information.length;
  const scale = sum(information.map((_, item) => at(information, item, item))) / size;
  const regular = information.map((row) => row.map((entry) => entry + scale / size));
  const inverse = invertPositiveDefinite(regular);
  if (inverse === null) return null;
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) add(inverse, row, column, -1 / (scale * size));
  }
  return inverse;
}
