/**
 * Smooth bends that device laws are made of, each with its slope. All are finite for any finite x.
 */

/** ln(1 + eˣ) without overflow. */
export const softplus = (x: number): number => Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));

/** Slope of softplus: from 0 to 1. */
export const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/**
 * What of x is above zero: exactly 0 below, x·(1 − exp(−x/bend)) above, x itself from a few bends on. Once
 * differentiable, rising, and of the sign of x, so that a resistance times it never delivers power.
 */
export const positivePart = (x: number, bend: number): number => (x > 0 ? -x * Math.expm1(-x / bend) : 0);

export function positivePartSlope(x: number, bend: number): number {
  if (!(x > 0)) return 0;
  const u = x / bend;
  return -Math.expm1(-u) + u * Math.exp(-u);
}

/** From 0 (z far below 0) along z to 1 (z far above 1); written about the nearer corner so that nothing cancels. */
export const saturate = (z: number, bend: number): number =>
  z < 0.5
    ? bend * (softplus(z / bend) - softplus((z - 1) / bend))
    : 1 + bend * (softplus(-z / bend) - softplus((1 - z) / bend));

export const saturateSlope = (z: number, bend: number): number =>
  logistic(z / bend) - logistic((z - 1) / bend);

/** The greater of a and b; above both by up to bend·ln 2 where they meet. */
export const smoothMax = (a: number, b: number, bend: number): number =>
  a > b ? a + bend * softplus((b - a) / bend) : b + bend * softplus((a - b) / bend);

/** Share of b in smoothMax: its slope against b; that against a is 1 less this. */
export const smoothMaxShare = (a: number, b: number, bend: number): number => logistic((b - a) / bend);
