import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createCrossingSearch } from "./locate-crossing";

/** Searches the curves over 0 … 1 and counts the steps tried. */
function locate(curves: readonly ((t: number) => number)[], tolerance: number) {
  const before = Float64Array.from(curves, (curve) => curve(0));
  const now = Float64Array.from(curves, (curve) => curve(1));
  const tried: number[] = [];
  const found = createCrossingSearch(before, now).locate(1, tolerance, (seconds) => {
    tried.push(seconds);
    for (const [k, curve] of curves.entries()) now[k] = curve(seconds);
    return now.some((value) => value > 0);
  });
  return { found: found ?? Number.NaN, tried };
}

describe("createCrossingSearch", () => {
  it("ends just after the crossing of a curve, at a step that was tried", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: -8, max: 8, noNaN: true }),
        fc.double({ min: -6, max: 6, noNaN: true }),
        (root, bend, decade) => {
          const rise = (t: number) => (Math.abs(bend) < 1e-6 ? t : Math.expm1(bend * t) / bend);
          const curve = (t: number) => 10 ** decade * (rise(t) - rise(root));
          const { found, tried } = locate([curve], 1e-9);
          expect(found - root).toBeGreaterThanOrEqual(0);
          expect(found - root).toBeLessThanOrEqual(2e-9);
          expect(tried.at(-1)).toBe(found);
          expect(tried.length).toBeLessThan(16);
        },
      ),
    );
  });

  it("finds the first of several", () => {
    const { found } = locate([(t) => t - 0.7, (t) => t * t - 0.16, () => -1], 1e-9);
    expect(found).toBeCloseTo(0.4, 8);
  });

  it("gets there by halves where a guard jumps", () => {
    const { found, tried } = locate([(t) => (t < 1 / 3 ? -1 : 1e6)], 1e-6);
    expect(found - 1 / 3).toBeGreaterThanOrEqual(0);
    expect(found - 1 / 3).toBeLessThanOrEqual(1.1e-6);
    expect(tried.length).toBeLessThan(80);
  });

  it("gives up where there is no solution", () => {
    const search = createCrossingSearch(Float64Array.of(-1), Float64Array.of(1));
    expect(search.locate(1, 1e-9, () => undefined)).toBeUndefined();
  });
});
