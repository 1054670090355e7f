import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Filament, operatingPoint } from "../index";
import { filamentHeat, filamentWithHeat } from "./filament-heat";
import { evaluateLaw, run, settle, worstSlope } from "./one-port-bench";

const lamp = (ratedVolts: number, ratedWatts: number, more: object = {}): Filament => ({
  kind: "filament",
  id: "e",
  a: "a",
  b: "0",
  ratedVolts,
  ratedWatts,
  ...more,
});
const anyLamp = fc
  .record({
    ratedVolts: fc.double({ min: 2, max: 240, noNaN: true }),
    ratedWatts: fc.double({ min: 0.5, max: 200, noNaN: true }),
    exponent: fc.double({ min: 0.3, max: 0.8, noNaN: true }),
    coldRatio: fc.double({ min: 0.04, max: 0.3, noNaN: true }),
  })
  .map((fields) => lamp(fields.ratedVolts, fields.ratedWatts, fields));

describe("a filament with its heat", () => {
  it("comes to rest on the static curve, whatever the lamp and the volts", () => {
    fc.assert(
      fc.property(anyLamp, fc.double({ min: 0.001, max: 2, noNaN: true }), (element, part) => {
        const volts = part * element.ratedVolts;
        const x = settle(filamentWithHeat, filamentHeat(element), { volts });
        if (!x) throw new Error("no balance");
        const amps = evaluateLaw(filamentWithHeat, filamentHeat(element), x).f[0] ?? Number.NaN;
        const point = operatingPoint({
          ground: "0",
          elements: [{ kind: "voltageSource", id: "v", positive: "a", negative: "0", volts }, element],
        });
        if (!point.ok) throw new Error(point.error.message);
        expect(amps / point.value.amps("e")).toBeCloseTo(1, 7);
      }),
    );
  });

  it("states the derivatives of its equations", () => {
    fc.assert(
      fc.property(
        anyLamp,
        fc.double({ min: -30, max: 30, noNaN: true }),
        fc.double({ min: -0.5, max: 4, noNaN: true }),
        (element, v, y) => {
          const x = Float64Array.of(v, y);
          const heat = filamentHeat(element);
          for (const isStatic of [false, true]) {
            const worst = worstSlope(filamentWithHeat, heat, x, [1e-4 * heat.kneeVolts, 1e-5], isStatic);
            expect(worst).toBeLessThan(1e-6);
          }
        },
      ),
    );
  });

  it("takes power, never delivers it, and stays finite far outside", () => {
    fc.assert(
      fc.property(
        anyLamp,
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        (element, v, y) => {
          const out = evaluateLaw(filamentWithHeat, filamentHeat(element), Float64Array.of(v, y));
          for (const values of [out.f, out.q, out.df, out.dq])
            expect(values.every(Number.isFinite)).toBe(true);
          expect(v * (out.f[0] ?? Number.NaN)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  it("keeps its books: watts taken in = heat held + watts given up", () => {
    const heat = filamentHeat(lamp(12, 21));
    const rows = run(filamentWithHeat, heat, { volts: 12, ohms: 0.2 }, 1e-4, (_x, time) => time >= 0.2);
    const watts = ({ x }: (typeof rows)[number]) => {
      const out = evaluateLaw(filamentWithHeat, heat, x);
      const taken = (x[0] ?? 0) * (out.f[0] ?? 0);
      return { taken, given: taken + (out.f[1] ?? 0), held: out.q[1] ?? 0 };
    };
    let taken = 0;
    let given = 0;
    rows.forEach((row, i) => {
      const weight = i === 0 || i === rows.length - 1 ? 0.5e-4 : 1e-4;
      taken += weight * watts(row).taken;
      given += weight * watts(row).given;
    });
    const first = rows[0];
    const last = rows.at(-1);
    if (!first || !last) throw new Error("no rows");
    const held = watts(last).held - watts(first).held;
    expect(taken).toBeGreaterThan(3);
    expect((held + given) / taken).toBeCloseTo(1, 9);
  });

  it("finds its balance from a cold start within 12 steps of Newton's method", () => {
    for (const element of [lamp(12, 1.2), lamp(12, 55), lamp(24, 70), lamp(120, 100)]) {
      for (const ohms of [1e-3, 1, 50]) {
        const drive = { volts: element.ratedVolts, ohms };
        expect(settle(filamentWithHeat, filamentHeat(element), drive, undefined, 12)).toBeDefined();
      }
    }
  });
});
