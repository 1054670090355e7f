import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Drive, evaluateLaw, run, settle, worstSlope } from "./one-port-bench";
import { type SwitchingPtcParameters, switchingPtcLaw, switchingPtcTimedLaw } from "./switching-ptc";
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
  it("settles where a cold part first finds its balance of heat", () => {
    let tripped = 0;
    let cool = 0;
    fc.assert(
      fc.property(parameters, between(3, 28), between(0, 3), (ptc, volts, share) => {
        const drive = { volts, ohms: 1e-3 + share / ptcSiemens(ptc.curve, 25) };
        const wanted = firstBalance(ptc, drive);
        if (wanted.margin < 0.05) return;
        const x = settle(switchingPtcLaw, ptc, drive, undefined, 60);
        if (!x) throw new Error("no balance within 60 steps");
        expect(Math.abs((x[1] ?? Number.NaN) - wanted.celsius)).toBeLessThan(
          1e-6 * Math.max(1, Math.abs(wanted.celsius)),
        );
        if (surplus(ptc, drive, wanted.celsius) > -1 && wanted.celsius > 90) tripped++;
        else cool++;
      }),
      { numRuns: 2000 },
    );
    // Both kinds of balance were met often.
    expect(tripped).toBeGreaterThan(100);
    expect(cool).toBeGreaterThan(100);
  });
});
