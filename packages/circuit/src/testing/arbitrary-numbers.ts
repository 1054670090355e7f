import fc from "fast-check";

const parts = 2 ** 31 - 1;

/**
 * Evenly spread, ends included. Not `fc.double`, which spreads evenly over the numbers that the machine can write: nearly
 * all of those between −3 and 7 are as good as 0.
 */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: parts }).map((part) => min + (max - min) * (part / parts));

/** Evenly spread over powers of ten: decades(-3, 0) are 1 mΩ to 1 Ω. */
export const decades = (low: number, high: number): fc.Arbitrary<number> =>
  between(low, high).map((decade) => 10 ** decade);
