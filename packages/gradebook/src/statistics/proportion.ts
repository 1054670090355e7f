import { type Interval, invalidInput, known, type Statistic, tooFewAttempts, z95 } from "./result";

export interface Proportion {
  readonly successes: number;
  readonly attempts: number;
  /** successes / attempts, 0 … 1. */
  readonly share: number;
  /** Wilson's 95 % score interval, without continuity correction, inside 0 … 1. */
  readonly interval: Interval;
}

/**
 * A share of attempts with Wilson's 95 % interval: (p̂ + z²/2n ± z·√(p̂(1−p̂)/n + z²/4n²)) / (1 + z²/n).
 * Needs one attempt: the interval is honest for any number, it only gets wide. Unlike p̂ ± z·s it never leaves 0 … 1 and
 * keeps a width when all or none succeed.
 * Source: E. B. Wilson, "Probable inference, the law of succession, and statistical inference", JASA 22 (1927).
 * Errors: `too_few_attempts`, `invalid_input` (not whole numbers with 0 ≤ successes ≤ attempts).
 */
export function proportion(successes: number, attempts: number): Statistic<Proportion> {
  if (!Number.isInteger(attempts) || attempts < 0)
    return invalidInput("attempts", "must be a whole number from 0");
  if (!Number.isInteger(successes) || successes < 0 || successes > attempts) {
    return invalidInput("successes", `must be a whole number within 0 … ${attempts}`);
  }
  if (attempts === 0) return tooFewAttempts(0, 1);
  const share = successes / attempts;
  const spread = (z95 * z95) / attempts;
  const centre = (share + spread / 2) / (1 + spread);
  const half = (z95 * Math.sqrt((share * (1 - share)) / attempts + spread / (4 * attempts))) / (1 + spread);
  return known({
    successes,
    attempts,
    share,
    // At the ends the formula gives exactly 0 or 1; rounding must not leave −1e−17 there.
    interval: {
      low: successes === 0 ? 0 : Math.max(0, centre - half),
      high: successes === attempts ? 1 : Math.min(1, centre + half),
    },
  });
}
