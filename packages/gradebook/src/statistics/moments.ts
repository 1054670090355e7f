/** What a sum of squares is divided by: the number of attempts N (this group only) or N − 1 (a sample of a larger one). */
export const divisors = ["attempts", "attemptsLessOne"] as const;
export type Divisor = (typeof divisors)[number];

export function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** The arithmetic mean of at least one value, in the values' own unit. */
export function mean(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError("The mean of no values is not defined.");
  return sum(values) / values.length;
}

/** The variance of at least two values, in the square of their unit. The divisor is always said, never assumed. */
export function variance(values: readonly number[], divisor: Divisor): number {
  if (values.length < 2) throw new RangeError("A variance takes at least two values.");
  const centre = mean(values);
  const squares = sum(values.map((value) => (value - centre) ** 2));
  return squares / (divisor === "attempts" ? values.length : values.length - 1);
}

/**
 * Pearson's r of two equally long lists, −1 … 1, or null when one of them does not vary. The divisor cancels out.
 */
export function correlation(first: readonly number[], second: readonly number[]): number | null {
  if (first.length !== second.length) throw new RangeError("A correlation takes two lists of one length.");
  const firstMean = mean(first);
  const secondMean = mean(second);
  let [both, squaresOfFirst, squaresOfSecond] = [0, 0, 0];
  for (const [index, value] of first.entries()) {
    const a = value - firstMean;
    const b = (second[index] ?? 0) - secondMean;
    both += a * b;
    squaresOfFirst += a * a;
    squaresOfSecond += b * b;
  }
  // Equal values leave a residue of rounding, not of spread.
  const still = 1e-20 * first.length;
  if (squaresOfFirst <= still || squaresOfSecond <= still) return null;
  return Math.max(-1, Math.min(1, both / Math.sqrt(squaresOfFirst * squaresOfSecond)));
}
