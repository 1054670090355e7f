import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  fuseMeltingRate,
  fuseMeltingSlope,
  fuseOpeningSeconds,
  fuseRecoveryRate,
  fuseRecoverySlope,
} from "./fuse-curve";
import { fuseContinuousAmps, fuseDerating } from "./fuse-derating";

const types = ["C", "E", "F", "bolted"] as const;
const type = fc.constantFrom(...types);
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("the time–current curve", () => {
  it("opens sooner the higher the current, and never up to 110 % of the rating", () => {
    fc.assert(
      fc.property(
        type,
        between(1, 200),
        between(1.1001, 50),
        between(1.001, 4),
        (form, rated, times, more) => {
          const seconds = fuseOpeningSeconds(form, rated, times * rated);
          expect(fuseOpeningSeconds(form, rated, times * more * rated)).toBeLessThan(seconds);
          expect(seconds).toBeLessThan(Number.POSITIVE_INFINITY);
          expect(fuseOpeningSeconds(form, rated, (1.1 * rated * times) / 50)).toBe(Number.POSITIVE_INFINITY);
          expect(fuseOpeningSeconds(form, rated, -times * rated)).toBe(seconds);
        },
      ),
    );
  });

  it("opens sooner in a hotter place", () => {
    fc.assert(
      fc.property(type, between(1.2, 10), between(20, 120), between(1, 60), (form, times, celsius, more) => {
        const cool = fuseOpeningSeconds(form, 10, 10 * times, celsius);
        expect(fuseOpeningSeconds(form, 10, 10 * times, celsius + more)).toBeLessThan(cool);
        expect(fuseDerating(form, celsius)).toBeLessThanOrEqual(1);
        expect(fuseContinuousAmps(form, 10, celsius)).toBeGreaterThan(0);
      }),
    );
  });

  it("melts by the same I²t far above the rating", () => {
    for (const form of types) {
      const melting = (times: number) => fuseOpeningSeconds(form, 10, 10 * times) * times * times;
      expect(melting(200) / melting(50)).toBeCloseTo(1, 2);
    }
  });

  it("is smooth: the slopes of melting and of recovery are those of central differences", () => {
    fc.assert(
      fc.property(type, between(-8, 8), (form, times) => {
        const h = 1e-5;
        const melting = (fuseMeltingRate(form, times + h) - fuseMeltingRate(form, times - h)) / (2 * h);
        const scale = fuseMeltingRate(form, times) + 1e-9;
        expect(Math.abs(melting - fuseMeltingSlope(form, times)) / scale).toBeLessThan(1e-4);
        const recovery = (fuseRecoveryRate(times + h) - fuseRecoveryRate(times - h)) / (2 * h);
        expect(Math.abs(recovery - fuseRecoverySlope(times))).toBeLessThan(1e-3);
      }),
    );
  });
});
