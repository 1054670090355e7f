import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type RectifierState,
  rectifiedMean,
  rectifiedSwing,
  rectifiedVolts,
} from "../physics/rectifier-ripple";
import { type AlternatorParameters, alternatorLaws } from "./alternator";
import { evaluateLaw, worstSlope } from "./one-port-bench";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const states: readonly RectifierState[] = ["sound", "openDiode", "shortedDiode"];

const alternators = fc.record<AlternatorParameters>({
  emfVolts: between(0, 100),
  sourceOhms: between(0.02, 1),
  setVolts: between(13, 15),
  bandVolts: between(0.05, 0.5),
  senseOhms: between(1e3, 1e5),
  senseFallbackVolts: between(1, 5),
  fieldScale: between(0, 1),
  fieldSeconds: between(0.05, 0.3),
  fieldOhms: between(3, 30),
  leakOhms: between(1e6, 1e9),
  rectifier: fc.constantFrom(...states),
  phasorRadiansPerSecond: between(0, 5000),
  pulses: fc.boolean(),
});

describe("alternator law", () => {
  const law = alternatorLaws.senseAndLamp;
  it.each([
    ["in time", false],
    ["at rest", true],
  ])("states its derivatives %s", (_name, isStatic) => {
    fc.assert(
      fc.property(
        alternators,
        between(-5, 20),
        between(10, 20),
        between(-5, 20),
        between(-50, 150),
        between(-0.2, 1.2),
        (alternator, v, sensed, lamp, amps, field) => {
          const x = Float64Array.of(v, sensed, lamp, amps, field);
          const steps = [1e-6, 1e-6, 1e-6, 1e-6, 1e-8];
          // Away from the points where a rectifier just begins to conduct: its slope has a corner there.
          const shape =
            isStatic || !alternator.pulses
              ? rectifiedMean[alternator.rectifier]
              : rectifiedVolts(alternator.rectifier, 0);
          const emf = shape * alternator.emfVolts * field;
          fc.pre(Math.abs(emf - v) > 1e-3 && Math.abs(Math.min(emf, v) - lamp) > 0.1);
          expect(worstSlope(law, alternator, x, steps, isStatic)).toBeLessThan(1e-3);
          expect(
            worstSlope(
              alternatorLaws.plain,
              alternator,
              Float64Array.of(v, amps, field),
              [1e-6, 1e-6, 1e-8],
              isStatic,
            ),
          ).toBeLessThan(1e-3);
        },
      ),
    );
  });

  it("is passive at standstill, whatever is tied to it", () => {
    fc.assert(
      fc.property(
        alternators,
        between(-20, 20),
        between(-20, 20),
        between(-20, 20),
        fc.boolean(),
        (moving, v, sensed, lamp, isStatic) => {
          const alternator = { ...moving, emfVolts: 0 };
          // Output and field where their own equations put them.
          const at = (amps: number, field: number) =>
            evaluateLaw(law, alternator, Float64Array.of(v, sensed, lamp, amps, field), isStatic).f;
          const field = -(at(0, 0)[4] ?? Number.NaN);
          const amps = -(at(0, field)[3] ?? Number.NaN);
          const f = at(amps, field);
          const taken =
            v * (f[0] ?? Number.NaN) + sensed * (f[1] ?? Number.NaN) + lamp * (f[2] ?? Number.NaN);
          expect(taken).toBeGreaterThanOrEqual(-1e-12);
        },
      ),
    );
  });

  it("delivers no more than its EMF gives", () => {
    fc.assert(
      fc.property(alternators, between(0, 60), between(0, 1), (alternator, v, field) => {
        const amps = -(
          evaluateLaw(alternatorLaws.plain, alternator, Float64Array.of(v, 0, field), true).f[1] ?? Number.NaN
        );
        const emf = rectifiedMean[alternator.rectifier] * alternator.emfVolts * field;
        expect(amps).toBeGreaterThanOrEqual(0);
        expect(v * amps).toBeLessThanOrEqual(emf * amps + 1e-12);
      }),
    );
  });
});

describe("rectified shapes", () => {
  const sampled = (state: RectifierState) => {
    const count = 72_000;
    const values = Array.from({ length: count }, (_, k) =>
      rectifiedVolts(state, ((k + 0.5) * 2 * Math.PI) / count),
    );
    const mean = values.reduce((sum, value) => sum + value, 0) / count;
    return { mean, swing: values.reduce((a, b) => Math.max(a, b)) - values.reduce((a, b) => Math.min(a, b)) };
  };

  it.each(states)("%s has its stated mean and swing", (state) => {
    const { mean, swing } = sampled(state);
    expect(mean).toBeCloseTo(rectifiedMean[state], 6);
    expect(swing).toBeCloseTo(rectifiedSwing[state], 3);
  });
});
