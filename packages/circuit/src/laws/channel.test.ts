import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { channelLaw, emptied, trippingChannelLaw } from "./channel";
import { evaluateLaw, settle, worstSlope } from "./one-port-bench";

const decades = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true }).map((decade) => 10 ** decade);
const channel = fc.record({
  isOn: fc.boolean(),
  ohms: decades(-3, 2),
  limitAmps: fc.oneof(decades(-2, 2), fc.constant(Number.POSITIVE_INFINITY)),
  leakAmps: fc.oneof(decades(-9, -3), fc.constant(0)),
});
const tripping = fc
  .tuple(channel, decades(-2, 2), decades(-4, 1), fc.option(decades(-3, 1), { nil: undefined }), fc.boolean())
  .map(([plain, limitAmps, tripSeconds, retrySeconds, isTripped]) => ({
    ...plain,
    limitAmps,
    tripSeconds,
    retrySeconds,
    isTripped,
    isOn: plain.isOn && !isTripped,
  }));
const volts = fc.double({ min: -60, max: 60, noNaN: true });
const amps = (p: Parameters<typeof channelLaw.evaluate>[0], v: number) =>
  evaluateLaw(channelLaw, p, Float64Array.of(v)).f[0] ?? Number.NaN;

describe("channel of an output stage", () => {
  it("rises with the voltage, never delivers power and stays finite", () => {
    const any = fc.oneof(volts, fc.double({ noNaN: true, noDefaultInfinity: true }));
    fc.assert(
      fc.property(channel, any, any, (p, v, w) => {
        const [low, high] = [Math.min(v, w), Math.max(v, w)];
        if (Math.abs(low) < 1e300 && Math.abs(high) < 1e300) {
          expect(Number.isFinite(amps(p, low))).toBe(true);
          expect(amps(p, high)).toBeGreaterThanOrEqual(amps(p, low) * (1 - Math.sign(low) * 1e-15));
        }
        expect(Math.sign(amps(p, v)) * Math.sign(v)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it("states its slope, by central differences", () => {
    fc.assert(
      fc.property(channel, fc.double({ min: -3, max: 3, noNaN: true }), (p, reach) => {
        // In units of the bend, so that the difference resolves it.
        const bend = p.isOn ? p.ohms * Math.min(p.limitAmps, 10) : 1;
        expect(worstSlope(channelLaw, p, Float64Array.of(reach * bend), [1e-5 * bend])).toBeLessThan(1e-5);
      }),
    );
  });

  it("is its resistance to a part in 100 000 below a third of the limit, and its limit to that beyond four times", () => {
    const p = { isOn: true, ohms: 0.02, limitAmps: 30, leakAmps: 0 };
    expect(Math.abs(amps(p, 0.3 * 0.6) / (0.3 * 30) - 1)).toBeLessThan(1e-5);
    expect(Math.abs(amps(p, 4.5 * 0.6) / 30 - 1)).toBeLessThan(1e-5);
    expect(amps(p, -12)).toBe(-600);
  });

  it("is found by Newton behind any source, from anywhere", () => {
    fc.assert(
      fc.property(channel, volts, decades(-3, 7), volts, (p, source, ohms, start) => {
        const x = settle(channelLaw, p, { volts: source, ohms }, Float64Array.of(start), 60);
        const v = x?.[0] ?? Number.NaN;
        const scale = (Math.abs(source) + Math.abs(v)) / ohms + Math.abs(amps(p, v));
        expect(Math.abs(amps(p, v) - (source - v) / ohms)).toBeLessThanOrEqual(1e-6 * scale + 1e-15);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("overload counter", () => {
  it("states its slopes, by central differences", () => {
    const full = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        tripping,
        fc.double({ min: -2, max: 3, noNaN: true }),
        full,
        fc.boolean(),
        (p, u, h, isStatic) => {
          const bend = p.isOn ? p.ohms * p.limitAmps : 1;
          const x = Float64Array.of(u * bend, h);
          expect(worstSlope(trippingChannelLaw, p, x, [1e-5 * bend, 1e-5], isStatic)).toBeLessThan(1e-5);
        },
      ),
    );
  });

  const p = {
    isOn: true,
    ohms: 0.1,
    limitAmps: 10,
    leakAmps: 0,
    tripSeconds: 4e-3,
    retrySeconds: 0.5,
    isTripped: false,
  };
  /** dh/dt at h. */
  const rate = (parameters: typeof p, v: number, h: number) =>
    -(evaluateLaw(trippingChannelLaw, parameters, Float64Array.of(v, h)).f[1] ?? Number.NaN);

  it("fills in the stated time into a short, whatever it holds already", () => {
    for (const h of [0, 0.3, 0.9]) expect(rate(p, 12, h) * 4e-3).toBeCloseTo(1, 9);
  });

  it("stays empty below the limit and empties again", () => {
    expect(rate(p, 0.5, 0) * 4e-3).toBeLessThan(2e-5);
    expect(rate(p, 0.5, 1) * 4e-3).toBeCloseTo(-1, 4);
    expect(rate({ ...p, isOn: false }, 12, 0.5) * 4e-3).toBeCloseTo(-0.5, 12);
  });

  it("has emptied after the stated time to try again: closed form of the exponential", () => {
    const tripped = { ...p, isOn: false, isTripped: true };
    const decay = -rate(tripped, 12, 0.7) / 0.7;
    expect(Math.exp(-decay * 0.5)).toBeCloseTo(emptied, 12);
  });

  it("is held at nothing where there is no time", () => {
    const out = evaluateLaw(trippingChannelLaw, p, Float64Array.of(12, 0), true);
    expect(out.f[1]).toBe(0);
    expect(out.q[1]).toBe(0);
  });
});
