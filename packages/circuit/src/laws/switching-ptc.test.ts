import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Drive, evaluateLaw, run, settle, worstSlope } from "./one-port-bench";
import { type SwitchingPtcParameters, switchingPtcLaw } from "./switching-ptc";
import { ptcSiemens, tableCurve } from "./switching-ptc-curve";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const smooth = fc
  .record({
    coldOhms: between(0.05, 20),
    hotShare: between(1e-5, 1e-3),
    switchCelsius: between(80, 160),
    coefficient: between(0.08, 0.4),
  })
  .map(({ coldOhms, ...rest }) => ({ form: "smooth" as const, coldSiemens: 1 / coldOhms, ...rest }));
const printed = tableCurve([
  [-40, 1.3],
  [25, 1],
  [80, 0.8],
  [110, 1.6],
  [130, 16],
  [160, 2000],
  [220, 9000],
]);
const parameters = fc
  .record({
    curve: fc.oneof(smooth, fc.constant(printed)),
    dissipation: between(0.005, 0.2),
    heatCapacity: between(0.1, 20),
    ambientCelsius: between(-40, 85),
  })
  .map((fields): SwitchingPtcParameters => ({ ...fields, startCelsius: fields.ambientCelsius }));

/** Surplus of heat at a temperature behind a source with a resistance. */
function surplus(ptc: SwitchingPtcParameters, { volts = 0, ohms = 0 }: Drive, celsius: number): number {
  const siemens = ptcSiemens(ptc.curve, celsius);
  const across = volts / (1 + ohms * siemens);
  return across * across * siemens - ptc.dissipation * (celsius - ptc.ambientCelsius);
}

/** Where a part that heats up from its ambient first finds its balance, by walking there in small steps. */
function firstBalance(ptc: SwitchingPtcParameters, drive: Drive): { celsius: number; margin: number } {
  const stride = 0.02;
  let low = ptc.startCelsius;
  let margin = Number.POSITIVE_INFINITY;
  while (surplus(ptc, drive, low + stride) > 0) {
    low += stride;
    if (low > 20_000) throw new Error("no balance");
  }
  let high = low + stride;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (surplus(ptc, drive, middle) > 0) low = middle;
    else high = middle;
  }
  // How deep the deficit beyond becomes: a balance that hardly exists may be passed.
  for (let t = high; t < high + 15; t += stride) {
    const lost = ptc.dissipation * (t - ptc.ambientCelsius);
    margin = Math.min(margin, surplus(ptc, drive, t) / lost);
  }
  return { celsius: low, margin: -margin };
}

describe("a switching PTC", () => {
  it("settles where a part that heats up first finds its balance of heat", () => {
    const met = { cool: 0, hot: 0 };
    fc.assert(
      fc.property(parameters, between(3, 28), between(0, 3), (ptc, volts, share) => {
        const drive = { volts, ohms: 1e-3 + share / ptcSiemens(ptc.curve, 25) };
        const wanted = firstBalance(ptc, drive);
        // A balance that hardly exists may be passed; the law says so.
        if (wanted.margin < 0.02) return;
        const x = settle(switchingPtcLaw, ptc, drive, undefined, 40);
        if (!x) throw new Error("no balance within 40 steps");
        const slack = 1e-6 * Math.max(1, Math.abs(wanted.celsius));
        expect(Math.abs((x[2] ?? Number.NaN) - wanted.celsius)).toBeLessThan(slack);
        met[wanted.celsius > 100 ? "hot" : "cool"]++;
      }),
      { numRuns: 300 },
    );
    expect(Math.min(met.cool, met.hot)).toBeGreaterThan(20);
  });

  it("finds the cool balance of a protector that has three, and the tripped one when there is no other", () => {
    // Behind 4 Ω at 12 V: cool, unstable and tripped balances; at 24 V the cool one is gone.
    const protector: SwitchingPtcParameters = {
      curve: { form: "smooth", coldSiemens: 5, hotShare: 1e-4, switchCelsius: 110, coefficient: 0.25 },
      dissipation: 0.035,
      heatCapacity: 0.5,
      ambientCelsius: 25,
      startCelsius: 25,
    };
    const twelve = { volts: 12, ohms: 4 };
    let changes = 0;
    for (let t = 25; t < 250; t += 0.5) {
      if (surplus(protector, twelve, t) * surplus(protector, twelve, t + 0.5) < 0) changes++;
    }
    expect(changes).toBe(3);
    expect(settle(switchingPtcLaw, protector, twelve)?.[2]).toBeLessThan(80);
    const tripped = settle(switchingPtcLaw, protector, { volts: 24, ohms: 4 });
    expect(tripped?.[2]).toBeGreaterThan(115);
    // Still held at 12 V: it stays tripped, as the part does.
    expect(settle(switchingPtcLaw, protector, twelve, tripped)?.[2]).toBeGreaterThan(115);
  });

  it("comes to the same temperature in time as at once, and is slow about it", () => {
    const heater: SwitchingPtcParameters = {
      curve: { form: "smooth", coldSiemens: 1, hotShare: 1e-4, switchCelsius: 120, coefficient: 0.2 },
      dissipation: 0.3,
      heatCapacity: 6,
      ambientCelsius: -10,
      startCelsius: -10,
    };
    const drive = { volts: 13.5, ohms: 0.05 };
    const rows = run(switchingPtcLaw, heater, drive, 0.05, (_x, time) => time >= 400);
    const settled = settle(switchingPtcLaw, heater, drive);
    expect(rows.at(-1)?.x[2]).toBeCloseTo(settled?.[2] ?? Number.NaN, 4);
    // Cold, 13.5 V over 1 Ω heat 6 J/K by about 27 K in a second.
    const second = rows.find(({ time }) => time >= 1)?.x[2] ?? Number.NaN;
    expect(second).toBeGreaterThan(10);
    expect(second).toBeLessThan(25);
  });

  it("states the derivatives of its equations", () => {
    fc.assert(
      fc.property(
        parameters,
        between(-30, 30),
        between(-50, 50),
        between(-60, 300),
        (ptc, v, amps, celsius) => {
          const worst = worstSlope(
            switchingPtcLaw,
            ptc,
            Float64Array.of(v, amps, celsius),
            [1e-4, 1e-4, 1e-4],
          );
          expect(worst).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it("only takes power, and stays finite far outside", () => {
    fc.assert(
      fc.property(parameters, between(-1e6, 1e6), between(-1e6, 1e6), (ptc, v, celsius) => {
        const amps = ptcSiemens(ptc.curve, celsius) * v;
        expect(amps * v).toBeGreaterThanOrEqual(0);
        const out = evaluateLaw(switchingPtcLaw, ptc, Float64Array.of(v, amps, celsius));
        for (const values of [out.f, out.q, out.df, out.dq]) expect(values.every(Number.isFinite)).toBe(true);
      }),
    );
  });

  it("has twice its cold resistance at the switching temperature and rises steadily", () => {
    fc.assert(
      fc.property(smooth, between(-60, 300), between(0.01, 50), (curve, celsius, more) => {
        expect(curve.coldSiemens / ptcSiemens(curve, curve.switchCelsius)).toBeCloseTo(2, 2);
        expect(ptcSiemens(curve, celsius + more)).toBeLessThanOrEqual(ptcSiemens(curve, celsius));
      }),
    );
  });
});
