import { type Answer, column, itemCount, type ScoreTable, totals } from "./answers";
import { correlation } from "./moments";
import { type Proportion, proportion } from "./proportion";
import { type Interval, invalidInput, known, type Statistic, tooFewAttempts, unknown, z95 } from "./result";

/** Fewer attempts than this say nothing of an item's difficulty. */
export const attemptsForDifficulty = 5;
/** Fewer attempts than this say nothing of an item's discrimination. */
export const attemptsForDiscrimination = 10;

/**
 * The difficulty of an item as the trade of testing defines it: the share of attempts that got it right (high is easy).
 * Entries that are null were not attempted and do not count.
 * Needs five attempts: with four, even when all agree, Wilson's interval covers half of the scale (0 of 4: 0 … 0.49),
 * so an easy item cannot be told from one of middling difficulty.
 * Errors: `too_few_attempts`, `invalid_input` (an entry that is not 0, 1 or null).
 */
export function itemDifficulty(answers: readonly Answer[]): Statistic<Proportion> {
  const bad = answers.findIndex((answer) => answer !== null && answer !== 0 && answer !== 1);
  if (bad >= 0) return invalidInput(`${bad}`, "must be 0, 1 or null");
  const given = answers.filter((answer) => answer !== null);
  if (given.length < attemptsForDifficulty) return tooFewAttempts(given.length, attemptsForDifficulty);
  return proportion(given.filter((answer) => answer === 1).length, given.length);
}

export interface Correlation {
  /** Pearson's r, −1 … 1. */
  readonly r: number;
  /** 95 % by Fisher's transformation. */
  readonly interval: Interval;
  readonly attempts: number;
}

export interface Discrimination {
  /** With the total of the other items: the item does not correlate with itself. */
  readonly corrected: Correlation;
  /** With the total of all items, this one included (for right and wrong, the point-biserial). Always flatters. */
  readonly uncorrected: Correlation;
}

/**
 * How well each item separates those who do well from those who do badly: its correlation with the total, one answer for
 * each column of `table` (learners × items, 0 … 1, no gaps). Items without spread answer for themselves; the rest are
 * still given.
 * Needs ten complete attempts: the 95 % interval of r is about ±z/√(n−3) on Fisher's scale, and below ten it is wide
 * enough (r 0 … ±0.63) that a good item and a useless one look alike.
 * Source of the interval: R. A. Fisher, z = artanh r with standard error 1/√(n−3) (from memory).
 * Errors: `too_few_attempts`, `too_few_items` (two are needed), `no_spread` per item, `invalid_input`.
 */
export function itemDiscriminations(table: ScoreTable): Statistic<readonly Statistic<Discrimination>[]> {
  const items = itemCount(table);
  if (!items.ok) return items;
  if (table.length < attemptsForDiscrimination)
    return tooFewAttempts(table.length, attemptsForDiscrimination);
  if (items.value < 2) return unknown({ code: "too_few_items", have: items.value, need: 2 });
  const whole = totals(table);
  return known(
    Array.from({ length: items.value }, (_, item) => {
      const scores = column(table, item);
      const others = whole.map((total, row) => total - (scores[row] ?? 0));
      const corrected = correlation(scores, others);
      const uncorrected = correlation(scores, whole);
      if (corrected === null || uncorrected === null) return unknown({ code: "no_spread", item });
      return known({
        corrected: withInterval(corrected, table.length),
        uncorrected: withInterval(uncorrected, table.length),
      });
    }),
  );
}

function withInterval(r: number, attempts: number): Correlation {
  const half = z95 / Math.sqrt(attempts - 3);
  // artanh of ±1 is not finite, and neither is its interval: a perfect correlation stays a point.
  const onScale = Math.atanh(r);
  return { r, interval: { low: Math.tanh(onScale - half), high: Math.tanh(onScale + half) }, attempts };
}
