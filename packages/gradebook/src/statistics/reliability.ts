import { column, itemCount, type ScoreTable, totals } from "./answers";
import { type Divisor, mean, sum, variance } from "./moments";
import { type Interval, known, type Statistic, tooFewAttempts, unknown, z95 } from "./result";

/** Fewer complete attempts than this say nothing of a test's reliability. */
export const attemptsForReliability = 10;

export interface Reliability {
  readonly attempts: number;
  readonly items: number;
  /** Cronbach's alpha; at most 1, and below 0 when the items pull against each other. */
  readonly alpha: number;
  /** Bonett's 95 % interval of alpha. */
  readonly interval: Interval;
  /** Kuder and Richardson's formula 20, or null where an item can be partly right. Equals alpha. */
  readonly kr20: number | null;
  /** Which divisor the two numbers below were taken with; alpha and KR-20 do not depend on it. */
  readonly divisor: Divisor;
  /** Mean and standard deviation of the totals, in items. */
  readonly mean: number;
  readonly standardDeviation: number;
  /** The standard error of measurement of one learner's total, s·√(1−r), in items. */
  readonly standardError: number;
}

/**
 * How far the total of several items would repeat itself. `table` is learners × items, each entry 0 … 1, no gaps.
 *
 * alpha = k/(k−1)·(1 − Σs²ᵢ/s²); KR-20 = k/(k−1)·(1 − Σpq/s²). pq is an item variance divided by N, so KR-20 takes
 * the total's variance divided by N as well, whatever `divisor` says: mixing pq with a variance divided by N − 1 makes
 * every small class look more reliable than it is. `divisor` decides only the standard deviation and with it the
 * standard error of measurement: "attempts" to speak of these learners, "attemptsLessOne" of the many they stand for.
 *
 * Needs ten complete attempts: Bonett's interval multiplies 1 − alpha by exp(±1.96·√(2k/((k−1)(n−2)))), which at ten
 * learners is already a factor of nearly three each way; below that any value is compatible with any other.
 * Sources: Cronbach 1951; Kuder and Richardson 1937; D. G. Bonett 2002 for the interval (formulas from memory).
 * Errors: `too_few_attempts`, `too_few_items` (two are needed), `no_spread` (all totals equal), `invalid_input`.
 */
export function reliability(table: ScoreTable, divisor: Divisor): Statistic<Reliability> {
  const counted = itemCount(table);
  if (!counted.ok) return counted;
  const items = counted.value;
  const attempts = table.length;
  if (attempts < attemptsForReliability) return tooFewAttempts(attempts, attemptsForReliability);
  if (items < 2) return unknown({ code: "too_few_items", have: items, need: 2 });
  const whole = totals(table);
  const columns = Array.from({ length: items }, (_, item) => column(table, item));
  if (variance(whole, "attempts") < 1e-18) return unknown({ code: "no_spread" });

  const lengthening = items / (items - 1);
  const itemVariance = sum(columns.map((scores) => variance(scores, divisor)));
  const alpha = lengthening * (1 - itemVariance / variance(whole, divisor));
  const half = z95 * Math.sqrt((2 * lengthening) / (attempts - 2));
  const standardDeviation = Math.sqrt(variance(whole, divisor));
  return known({
    attempts,
    items,
    alpha,
    interval: { low: 1 - (1 - alpha) * Math.exp(half), high: 1 - (1 - alpha) * Math.exp(-half) },
    kr20: kuderRichardson20(columns, whole),
    divisor,
    mean: mean(whole),
    standardDeviation,
    // Rounding may leave alpha a hair above 1 when all items agree.
    standardError: standardDeviation * Math.sqrt(Math.max(0, 1 - alpha)),
  });
}

function kuderRichardson20(columns: readonly (readonly number[])[], whole: readonly number[]): number | null {
  if (columns.some((scores) => scores.some((score) => score !== 0 && score !== 1))) return null;
  const pq = sum(columns.map((scores) => mean(scores) * (1 - mean(scores))));
  return (columns.length / (columns.length - 1)) * (1 - pq / variance(whole, "attempts"));
}
