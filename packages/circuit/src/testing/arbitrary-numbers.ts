import fc from "fast-check";

/** Evenly spread, ends included. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

/** Evenly spread over powers of ten: decades(-3, 0) are 1 mΩ to 1 Ω. */
export const decades = (low: number, high: number): fc.Arbitrary<number> =>
  between(low, high).map((decade) => 10 ** decade);
