import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compileWave, refuseWave } from "./compile-wave";
import type { Wave } from "./wave";

const corners = (wave: Wave, from: number, until: number): number[] => {
  const form = compileWave(wave);
  const found: number[] = [];
  for (let t = form.cornerAfter(from); t < until; t = form.cornerAfter(t)) found.push(t);
  return found;
};
const valueAt = (wave: Wave, t: number) => compileWave(wave).pieceAt(t)?.valueAt(t);

describe("compileWave", () => {
  it("holds a step until the next and leaves the element alone before the first", () => {
    const wave: Wave = { kind: "steps", times: [1, 2], values: [true, false] };
    expect([0.5, 1.5, 7].map((t) => valueAt(wave, t))).toEqual([undefined, true, false]);
    expect(corners(wave, 0, 10)).toEqual([1, 2]);
  });

  it("joins points by lines and is level outside them", () => {
    const wave: Wave = { kind: "line", times: [1, 3, 4], values: [0, 4, -1] };
    expect([0, 2, 3.5, 9].map((t) => valueAt(wave, t))).toEqual([0, 2, 1.5, -1]);
    expect(corners(wave, 0, 10)).toEqual([1, 3, 4]);
  });

  it("ramps the flanks of a pulse from where they would jump", () => {
    const wave: Wave = {
      kind: "pulse",
      low: 1,
      high: 5,
      hertz: 10,
      duty: 0.5,
      delaySeconds: 0.2,
      riseSeconds: 0.01,
    };
    const expected = [1, 3, 5, 3, 1, 3];
    for (const [i, t] of [0.1, 0.205, 0.23, 0.255, 0.28, 0.305].entries())
      expect(valueAt(wave, t)).toBeCloseTo(expected[i], 9);
    const found = corners(wave, 0, 0.355);
    for (const [i, t] of [0.2, 0.21, 0.25, 0.26, 0.3, 0.31, 0.35].entries())
      expect(found[i]).toBeCloseTo(t, 12);
  });

  it("has two corners a period, rising, however late", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.integer({ min: 0, max: 1_000_000 }),
        (hertz, duty, period) => {
          const wave: Wave = { kind: "pulse", low: 0, high: 1, hertz, duty };
          const form = compileWave(wave);
          const start = (period + 1e-4) / hertz;
          const fall = form.cornerAfter(start);
          const rise = form.cornerAfter(fall);
          expect(fall * hertz - period).toBeCloseTo(duty, 5);
          expect(rise * hertz - period).toBeCloseTo(1, 5);
          expect(form.pieceAt((start + fall) / 2)?.valueAt(0)).toBe(1);
          expect(form.pieceAt((fall + rise) / 2)?.valueAt(0)).toBe(0);
        },
      ),
    );
  });

  it("waits at the first value of a sine that is delayed", () => {
    const wave: Wave = {
      kind: "sine",
      offset: 1,
      amplitude: 2,
      hertz: 5,
      phaseDegrees: 90,
      delaySeconds: 0.1,
    };
    expect(valueAt(wave, 0.05)).toBeCloseTo(3, 12);
    expect(valueAt(wave, 0.2)).toBeCloseTo(-1, 12);
  });

  it.each<[Wave, RegExp]>([
    [{ kind: "steps", times: [], values: [] }, /one or more/],
    [{ kind: "steps", times: [1, 1], values: [0, 1] }, /rise/],
    [{ kind: "line", times: [0, 1], values: [0] }, /as many values/],
    [{ kind: "pulse", low: 0, high: 1, hertz: 0, duty: 0.5 }, /hertz/],
    [{ kind: "pulse", low: 0, high: 1, hertz: 1, duty: 1.5 }, /duty/],
    [{ kind: "pulse", low: false, high: true, hertz: 1, duty: 0.5, riseSeconds: 0.1 }, /true and false/],
    [{ kind: "pulse", low: 0, high: 1, hertz: 1, duty: 0.5, riseSeconds: 0.6 }, /fit/],
    [{ kind: "sine", amplitude: Number.NaN, hertz: 1 }, /finite/],
    [{ kind: "sine", amplitude: 1, hertz: -1 }, /hertz/],
  ])("refuses %o", (wave, words) => {
    expect(refuseWave(wave)).toMatch(words);
  });
});
