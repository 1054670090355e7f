/** Points on the ability scale, in logits, and their weights, which sum to one. */
export interface Quadrature {
  readonly points: readonly number[];
  readonly weights: readonly number[];
}

/**
 * The standard normal distribution on 61 points from −6 to 6, evenly spaced. The trapezoidal rule converges faster than
 * any power of the spacing for a function that dies out at both ends; what is left is the 2e−9 of the mass beyond ±6,
 * about 1e−7 in the log-likelihood of a thousand attempts.
 */
export const standardNormal61: Quadrature = (() => {
  const points = Array.from({ length: 61 }, (_, index) => (index - 30) / 5);
  const density = points.map((point) => Math.exp(-(point * point) / 2));
  const total = density.reduce((all, one) => all + one, 0);
  return { points, weights: density.map((one) => one / total) };
})();
