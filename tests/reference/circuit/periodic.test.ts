import {
  type CircuitElement,
  type Periodic,
  type PeriodicOptions,
  periodicSteadyState,
} from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

// Steady states under PWM with an outside answer: closed forms, computed here from the formula that stands beside each.

const steady = (elements: readonly CircuitElement[], options: PeriodicOptions): Periodic => {
  const result = periodicSteadyState({ ground: "0", elements }, options);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

const R = (id: string, a: string, b: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});
const source = (volts: number): CircuitElement => ({
  kind: "voltageSource",
  id: "v",
  positive: "a",
  negative: "0",
  volts,
});
const pulses = (high: number, hertz: number, duty: number, low = 0) =>
  ({ element: "v", field: "volts", wave: { kind: "pulse", low, high, hertz, duty } }) as const;

const near = (value: number, expected: number, allowed: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(allowed);
const tight = { relativeTolerance: 1e-7, voltTolerance: 1e-9, ampTolerance: 1e-10 };

describe("into resistors", () => {
  it.each([0, 0.1, 0.25, 0.5, 0.9, 1])("average V·d, RMS V·√d, exactly; duty %d", (duty) => {
    const elements = [source(0), R("r", "a", "m", 100), R("s", "m", "0", 300)];
    const period = steady(elements, { hertz: 200, drives: [pulses(12, 200, duty)] });
    const { average, rms, acRms, min, max } = period.measure({ plus: "m" });
    near(average, 9 * duty, 1e-12);
    near(rms, 9 * Math.sqrt(duty), 1e-12);
    near(acRms, 9 * Math.sqrt(duty * (1 - duty)), 1e-9);
    near(min, duty === 1 ? 9 : 0, 1e-12);
    near(max, duty === 0 ? 0 : 9, 1e-12);
    const timing = period.timing({ plus: "m" }, 4.5);
    near(timing.duty, duty, 1e-12);
    near(timing.hertz, duty === 0 || duty === 1 ? 0 : 200, 1e-9);
    expect(period.periods).toBe(1);
  });

  // Two lines that rest at 2.5 V and part by 2 V for a share d of the time: averages 2.5 + d and 2.5 − d
  // (levels of ISO 11898-2; the averages are closed form).
  it.each([0, 0.2, 0.35])("reads a bus in dominant state for a share of %d as 2.5 V ± d", (duty) => {
    const elements: CircuitElement[] = [
      { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts: 2.5, ohms: 30 },
      { kind: "voltageSource", id: "w", positive: "b", negative: "0", volts: 2.5, ohms: 30 },
      R("in1", "a", "0", 1e9),
      R("in2", "b", "0", 1e9),
    ];
    const low = {
      element: "w",
      field: "volts",
      wave: { kind: "pulse", low: 2.5, high: 1.5, hertz: 1e4, duty },
    } as const;
    const period = steady(elements, { hertz: 1e4, drives: [pulses(3.5, 1e4, duty, 2.5), low] });
    near(period.measure({ plus: "a" }).average, 2.5 + duty, 1e-6);
    near(period.measure({ plus: "b" }).average, 2.5 - duty, 1e-6);
    near(period.measure({ plus: "a", minus: "b" }).average, 2 * duty, 1e-6);
  });
});

describe("into a coil", () => {
  // Closed form: i swings between lo and hi = lo·e^(−dT/τ) + V/R·(1 − e^(−dT/τ)), lo = hi·e^(−(1−d)T/τ).
  it.each([
    [0.3, 200],
    [0.5, 1000],
    [0.8, 20_000],
  ])("swings as it must at duty %d and %d Hz", (duty, hertz) => {
    const [volts, ohms, henries] = [12, 3, 0.03];
    const coil: CircuitElement = { kind: "inductor", id: "l", a: "m", b: "0", henries };
    const elements = [source(0), R("r", "a", "m", ohms), coil];
    const period = steady(elements, { hertz, drives: [pulses(volts, hertz, duty)], ...tight });
    const tau = henries / ohms;
    const on = Math.exp(-duty / hertz / tau);
    const off = Math.exp(-(1 - duty) / hertz / tau);
    const high = ((volts / ohms) * (1 - on)) / (1 - on * off);
    const { average, min, max, acRms } = period.measure({ amps: "l" });
    near(average, (duty * volts) / ohms, 2e-6);
    near(max, high, 2e-6);
    near(min, high * off, 2e-6);
    // Nearly a triangle when the period is short: a twelfth of the square of its height.
    if (hertz === 20_000) near(acRms, (max - min) / Math.sqrt(12), 1e-6);
    near(period.measure({ plus: "m" }).average, 0, 1e-5);
    expect(period.periods).toBeLessThanOrEqual(6);
  });
});

describe("into a filter", () => {
  it("finds the mean of a filter of a hundred thousand periods without waiting for it (closed form)", () => {
    const capacitor: CircuitElement = { kind: "capacitor", id: "c", a: "m", b: "0", farads: 1 };
    const elements = [source(0), R("r", "a", "m", 500), capacitor];
    const period = steady(elements, { hertz: 200, drives: [pulses(12, 200, 0.25)], ...tight });
    // A millionth of the mean is 1e-11 of it in one period: near the end of the digits.
    near(period.measure({ plus: "m" }).average, 3, 1e-5);
    expect(period.periods).toBeLessThanOrEqual(10);
  });

  it("stands at the peak behind a diode without load, and sags between pulses with one (closed form)", () => {
    const elements: CircuitElement[] = [
      source(0),
      { kind: "diode", id: "d", anode: "a", cathode: "m" },
      { kind: "capacitor", id: "c", a: "m", b: "0", farads: 1e-3 },
      R("load", "m", "0", 1000),
    ];
    const period = steady(elements, { hertz: 100, drives: [pulses(12, 100, 0.5)], ...tight });
    const { min, max } = period.measure({ plus: "m" });
    // RC = 1 s and 5 ms without supply.
    near(min / max, Math.exp(-0.005), 2e-5);
  });
});

describe("a motor under PWM", () => {
  it("turns where the mean torque and the mean voltage balance (closed form)", () => {
    const [volts, ohms, constant, friction, duty] = [12, 0.5, 0.03, 1e-4, 0.4];
    const elements: CircuitElement[] = [
      source(0),
      {
        kind: "motor",
        id: "m",
        plus: "a",
        minus: "0",
        ohms,
        henries: 1e-3,
        motorConstant: constant,
        inertia: 1e-2,
        viscousFriction: friction,
      },
    ];
    const record = { amps: ["m"], quantities: [{ element: "m", name: "radiansPerSecond" }] };
    const period = steady(elements, { hertz: 500, drives: [pulses(volts, 500, duty)], record, ...tight });
    // d·V = R·I + K·w and K·I = b·w.
    const speed = (duty * volts) / (constant + (ohms * friction) / constant);
    near(period.measure({ element: "m", quantity: "radiansPerSecond" }).average, speed, 1e-3);
    near(period.measure({ amps: "m" }).average, (friction * speed) / constant, 1e-5);
    expect(period.periods).toBeLessThanOrEqual(8);
  });
});

describe("without a steady state", () => {
  it("says which node does not come back", () => {
    // A flasher that runs at its own pace.
    const elements: CircuitElement[] = [
      source(12),
      R("r", "a", "c", 1e4),
      { kind: "capacitor", id: "c", a: "c", b: "0", farads: 1e-6 },
      {
        kind: "comparator",
        id: "k",
        a: "c",
        b: "0",
        positive: "c",
        negative: "0",
        thresholdVolts: 4,
        hysteresisVolts: 4,
        closedOhms: 1000,
      },
    ];
    const result = periodicSteadyState(
      { ground: "0", elements },
      { hertz: 170, drives: [], start: "rest", maxPeriods: 40 },
    );
    expect(result).toMatchObject({ ok: false, error: { code: "not_periodic", node: "c" } });
  });
});
