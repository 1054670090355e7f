import { describe, expect, it } from "vitest";
import { normalBelow, stretchDensity } from "./normal";

describe("the normal distribution", () => {
  // Table of the standard normal, from memory.
  it.each([
    [0, 0.5],
    [1, 0.8413447],
    [1.959964, 0.975],
    [3, 0.9986501],
    [-2.5, 0.0062097],
    [Number.POSITIVE_INFINITY, 1],
    [Number.NEGATIVE_INFINITY, 0],
  ])("below %d lies %d of it", (z, share) => {
    expect(Math.abs(normalBelow(z) - share)).toBeLessThan(2e-7);
  });

  it.each([
    [5, 5, 0.1],
    [5, 5.5, 0.1],
    [0, 12, 0.03],
  ])("a stretch from %d to %d read with a spread of %d has all its density somewhere", (low, high, sigma) => {
    const width = sigma / 20;
    let sum = 0;
    for (let x = low - 8 * sigma; x < high + 8 * sigma; x += width)
      sum += stretchDensity(x, low, high, sigma) * width;
    expect(sum).toBeCloseTo(1, 3);
  });
});
