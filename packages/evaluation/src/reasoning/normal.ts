/** Chance that a standard normal quantity is below `z`. Abramowitz and Stegun 26.2.17, error below 7.5e-8. */
export function normalBelow(z: number): number {
  if (z === Number.POSITIVE_INFINITY) return 1;
  if (z === Number.NEGATIVE_INFINITY) return 0;
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const polynomial =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI)) * polynomial;
  return z > 0 ? 1 - tail : tail;
}

/**
 * Density at `x` of a quantity that lies anywhere between `low` and `high` alike and is read with the spread `sigma`:
 * a normal where the two are the same, else the flat stretch convolved with it. In units of 1/x.
 */
export function stretchDensity(x: number, low: number, high: number, sigma: number): number {
  if (high - low < 0.1 * sigma) {
    const z = (x - (low + high) / 2) / sigma;
    return Math.exp(-(z * z) / 2) / (sigma * Math.sqrt(2 * Math.PI));
  }
  return Math.max(0, normalBelow((x - low) / sigma) - normalBelow((x - high) / sigma)) / (high - low);
}
