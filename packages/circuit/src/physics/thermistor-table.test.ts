import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitSteinhartHart, steinhartHartCelsius, steinhartHartOhms } from "./steinhart-hart";
import { thermistorOhms } from "./thermistor-table";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** A table with temperatures a few kelvin apart or more, by its change of ln R per kelvin. */
const table = (perKelvin: fc.Arbitrary<number>) =>
  fc.array(fc.tuple(between(4, 40), perKelvin), { minLength: 2, maxLength: 12 }).map((rows) => {
    let celsius = -40;
    let logarithm = 8;
    return rows.map(([kelvin, change]): readonly [number, number] => {
      celsius += kelvin;
      logarithm += change * kelvin;
      return [celsius, Math.exp(logarithm)];
    });
  });
const falling = table(between(-0.09, -0.01));
const any = table(fc.oneof(between(-0.09, -0.01), between(0.003, 0.1)));

describe("a thermistor by its table", () => {
  it("meets every point and stays between its neighbours' ohms, with no jump", () => {
    fc.assert(
      fc.property(fc.oneof(falling, any), between(0, 1), (points, share) => {
        points.forEach(([celsius, ohms], i) => {
          expect(thermistorOhms(points, celsius) / ohms).toBeCloseTo(1, 9);
          const next = points[i + 1];
          if (!next) return;
          const between = thermistorOhms(points, celsius + share * (next[0] - celsius));
          expect(between).toBeLessThanOrEqual(Math.max(ohms, next[1]) * (1 + 1e-12));
          expect(between).toBeGreaterThanOrEqual(Math.min(ohms, next[1]) * (1 - 1e-12));
        });
      }),
    );
  });

  it("falls steadily where the table falls, far beyond its ends too", () => {
    fc.assert(
      fc.property(falling, between(-200, 400), between(0.01, 50), (points, celsius, more) => {
        const ohms = thermistorOhms(points, celsius);
        const hotter = thermistorOhms(points, celsius + more);
        expect(hotter).toBeLessThanOrEqual(ohms);
        expect(Number.isFinite(ohms) && hotter > 0).toBe(true);
      }),
    );
  });

  it("has no kink: the slopes on both sides of a point are the same", () => {
    fc.assert(
      fc.property(fc.oneof(falling, any), (points) => {
        for (const [celsius] of points) {
          const at = (shift: number) => Math.log(thermistorOhms(points, celsius + shift));
          // One-sided to second order, so that a curve of strong bend does not pass for a kink.
          const h = 1e-5;
          const right = (4 * at(h) - 3 * at(0) - at(2 * h)) / (2 * h);
          const left = (3 * at(0) - 4 * at(-h) + at(-2 * h)) / (2 * h);
          expect(Math.abs(left - right)).toBeLessThan(1e-3 + 1e-2 * Math.abs(left));
        }
      }),
    );
  });

  it("does not care in which order the points come", () => {
    fc.assert(
      fc.property(any, between(-60, 300), (points, celsius) => {
        expect(thermistorOhms([...points].reverse(), celsius)).toBe(thermistorOhms(points, celsius));
      }),
    );
  });

  it("is the Steinhart–Hart law itself through three points", () => {
    const points = [
      [-40, 48805],
      [25, 2044],
      [140, 66.2],
    ] as const;
    const fit = fitSteinhartHart(points);
    if (!fit.ok) throw new Error(fit.error.message);
    for (let celsius = -40; celsius <= 140; celsius += 7) {
      expect(thermistorOhms(points, celsius) / steinhartHartOhms(fit.value, celsius)).toBeCloseTo(1, 9);
    }
  });
});

describe("the Steinhart–Hart law", () => {
  it("turns ohms into degrees and back, c above, at or below 0", () => {
    fc.assert(
      fc.property(
        between(1e-3, 2e-3),
        between(1.5e-4, 3e-4),
        between(-2e-7, 5e-7),
        between(-55, 200),
        (a, b, c, celsius) => {
          const ohms = steinhartHartOhms({ a, b, c }, celsius);
          // Beyond the turn of a law with c below 0 the value of the turn is kept.
          if (b + 3 * c * Math.log(ohms) ** 2 < 1e-5) return;
          expect(steinhartHartCelsius({ a, b, c }, ohms)).toBeCloseTo(celsius, 6);
        },
      ),
    );
  });

  it.each([
    ["bad_point", [0, 1000], [25, -5], [50, 300]],
    ["bad_point", [0, 1000], [Number.NaN, 500], [50, 300]],
    ["not_falling", [0, 1000], [25, 1500], [50, 300]],
    ["not_falling", [0, 1000], [0, 900], [50, 300]],
    ["bends_back", [0, 1000], [25, 999], [50, 1]],
  ] as const)("refuses a fit: %s", (code, first, second, third) => {
    expect(fitSteinhartHart([first, second, third])).toMatchObject({ ok: false, error: { code } });
  });
});
