/**
 * Bayes' rule with logarithms: shares proportional to weight · exp(log-likelihood). Weights are ≥ 0 and need not add up
 * to 1; a log-likelihood may be −∞. Returns shares that do add up to 1, in the same order.
 * Throws a RangeError when nothing has any weight left: then no hypothesis explains what was seen, which is for the
 * caller to prevent (a share of outliers does).
 */
export function posterior(weights: readonly number[], logLikelihoods: readonly number[]): number[] {
  const exponents = weights.map((weight, index) => Math.log(weight) + (logLikelihoods[index] ?? Number.NaN));
  const most = exponents.reduce((greatest, value) => Math.max(greatest, value), Number.NEGATIVE_INFINITY);
  if (!Number.isFinite(most)) throw new RangeError("no hypothesis has any weight left");
  const unscaled = exponents.map((value) => Math.exp(value - most));
  const sum = unscaled.reduce((total, value) => total + value, 0);
  return unscaled.map((value) => value / sum);
}
