import { type CircuitElement, type Transient, type TransientOptions, transient } from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

// Waveforms with an outside answer. "Closed form": computed here from the formula that stands beside it.

const followed = (elements: readonly CircuitElement[], options: TransientOptions): Transient => {
  const result = transient({ ground: "0", elements }, options);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

const V = (id: string, positive: string, negative: string, volts: number): CircuitElement => ({
  kind: "voltageSource",
  id,
  positive,
  negative,
  volts,
});
const R = (id: string, a: string, b: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});
const C = (id: string, a: string, b: string, farads: number): CircuitElement => ({
  kind: "capacitor",
  id,
  a,
  b,
  farads,
});
const L = (id: string, a: string, b: string, henries: number): CircuitElement => ({
  kind: "inductor",
  id,
  a,
  b,
  henries,
});

const near = (value: number | undefined, expected: number, allowed: number) =>
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(allowed);

/** Largest distance of a sampled signal from a formula, over 400 times between steps as well as at them. */
function worst(
  run: Transient,
  signal: (w: Pick<Transient, "volts" | "amps">) => Float64Array,
  exact: (t: number) => number,
) {
  const from = run.seconds[0] ?? 0;
  const until = run.seconds.at(-1) ?? 0;
  const times = Array.from({ length: 401 }, (_, i) => from + ((until - from) * i) / 400);
  const error = (seconds: ArrayLike<number>, samples: Float64Array) =>
    samples.reduce((most, value, i) => Math.max(most, Math.abs(value - exact(seconds[i] ?? Number.NaN))), 0);
  return Math.max(error(run.seconds, signal(run)), error(times, signal(run.samplesAt(times))));
}

const tight = { relativeTolerance: 1e-7, voltTolerance: 1e-9, ampTolerance: 1e-9 };

describe("one store", () => {
  // Source: T. R. Kuphaldt, Lessons in Electric Circuits vol. I ch. 16 (from memory); closed form 15·(1 − e^(−t/RC)).
  it.each([
    [1, 9.481809],
    [7.25, 14.98935],
  ])("charges 100 µF through 10 kΩ from 15 V: at %d s %d V", (seconds, volts) => {
    const elements = [V("v", "a", "0", 15), R("r", "a", "c", 1e4), C("c", "c", "0", 1e-4)];
    const run = followed(elements, { untilSeconds: 8, start: "rest", at: [seconds], ...tight });
    near(run.volts("c")[0], volts, 5e-6);
  });

  // Source: the same (from memory); closed form 5·(1 − e^(−t·R/L)).
  it.each([
    [1 / 3, 3.160602],
    [3.5, 4.999862],
  ])("builds up the current of 1 H through 3 Ω from 15 V: at %d s %d A", (seconds, amps) => {
    const elements = [V("v", "a", "0", 15), R("r", "a", "c", 3), L("l", "c", "0", 1)];
    const run = followed(elements, { untilSeconds: 4, start: "rest", at: [seconds], ...tight });
    near(run.amps("l")[0], 5 * (1 - Math.exp(-3 * seconds)), 1e-6);
    // The source cuts its digits off.
    near(run.amps("l")[0], amps, 2e-6);
  });

  it("discharges from given volts, and frees given amps (closed form)", () => {
    const elements = [
      C("c", "a", "0", 1e-6),
      R("r", "a", "0", 2200),
      L("l", "b", "0", 0.1),
      R("s", "b", "0", 50),
    ];
    const options = {
      untilSeconds: 8e-3,
      start: "rest",
      initialVolts: { c: 12 },
      initialAmps: { l: 0.4 },
    } as const;
    const run = followed(elements, { ...options, ...tight });
    expect(
      worst(
        run,
        (w) => w.volts("a"),
        (t) => 12 * Math.exp(-t / 2.2e-3),
      ),
    ).toBeLessThan(1e-5);
    expect(
      worst(
        run,
        (w) => w.amps("l"),
        (t) => 0.4 * Math.exp(-t / 2e-3),
      ),
    ).toBeLessThan(1e-6);
  });

  it("lets a coil's current through a resistor jump to the volts that it asks for (closed form)", () => {
    const elements: CircuitElement[] = [
      V("v", "a", "0", 12),
      { kind: "switch", id: "s", a: "a", b: "b", closed: true, closedOhms: 1e-6, openOhms: 1e12 },
      L("l", "b", "c", 0.5),
      R("r", "c", "0", 60),
      R("across", "b", "0", 600),
    ];
    const open = {
      element: "s",
      field: "closed",
      wave: { kind: "steps", times: [0.01], values: [0] },
    } as const;
    const run = followed(elements, { untilSeconds: 0.03, drives: [open], ...tight });
    const exact = (t: number) => 0.2 * Math.exp((-(t - 0.01) * 660) / 0.5);
    const after = run.seconds.indexOf(0.01) + 1;
    expect(run.seconds[after]).toBe(0.01);
    near(run.volts("b")[after - 1], 12, 1e-5);
    near(run.volts("b")[after], -120, 1e-3);
    near(run.samplesAt([0.015]).volts("b")[0], -600 * exact(0.015), 1e-4);
  });
});

describe("two stores", () => {
  const volts = 10;
  const [henries, farads] = [1e-3, 1e-6];
  const omega = 1 / Math.sqrt(henries * farads);
  // Closed form of the step response of a series RLC, damping a = R/2L, w0 = 1/√(LC).
  const exact: Record<string, (a: number) => (t: number) => number> = {
    under: (a) => {
      const w = Math.sqrt(omega * omega - a * a);
      return (t) => volts * (1 - Math.exp(-a * t) * (Math.cos(w * t) + (a / w) * Math.sin(w * t)));
    },
    critical: (a) => (t) => volts * (1 - Math.exp(-a * t) * (1 + a * t)),
    over: (a) => {
      const root = Math.sqrt(a * a - omega * omega);
      const [p, q] = [-a + root, -a - root];
      return (t) => volts * (1 - (p * Math.exp(q * t) - q * Math.exp(p * t)) / (p - q));
    },
  };
  it.each([
    ["under", 10],
    ["critical", 2 * Math.sqrt(henries / farads)],
    ["over", 300],
  ])("answers a step, damping %s", (damping, ohms) => {
    const elements = [
      V("v", "a", "0", volts),
      R("r", "a", "b", ohms),
      L("l", "b", "c", henries),
      C("c", "c", "0", farads),
    ];
    const run = followed(elements, { untilSeconds: 1e-3, start: "rest", ...tight });
    expect(
      worst(run, (w) => w.volts("c"), exact[damping]?.(ohms / (2 * henries)) ?? (() => Number.NaN)),
    ).toBeLessThan(2e-5);
  });

  it("keeps the swing of a coil and a capacitor without loss (closed form)", () => {
    const elements = [C("c", "a", "0", farads), L("l", "a", "0", henries)];
    const options = { untilSeconds: 20 / omega, start: "rest", initialVolts: { c: 5 } } as const;
    const run = followed(elements, { ...options, ...tight });
    expect(
      worst(
        run,
        (w) => w.volts("a"),
        (t) => 5 * Math.cos(omega * t),
      ),
    ).toBeLessThan(5e-5);
  });
});

describe("driven", () => {
  it("follows a sine through a resistor into a capacitor (closed form)", () => {
    const [ohms, farads, hertz] = [1000, 1e-6, 100];
    const w = 2 * Math.PI * hertz;
    const elements = [V("v", "a", "0", 0), R("r", "a", "c", ohms), C("c", "c", "0", farads)];
    const drive = { element: "v", field: "volts", wave: { kind: "sine", amplitude: 10, hertz } } as const;
    const run = followed(elements, { untilSeconds: 0.03, start: "rest", drives: [drive], ...tight });
    const tau = ohms * farads;
    const scale = 10 / (1 + (w * tau) ** 2);
    const form = (t: number) => scale * (Math.sin(w * t) - w * tau * (Math.cos(w * t) - Math.exp(-t / tau)));
    expect(worst(run, (v) => v.volts("c"), form)).toBeLessThan(2e-5);
  });

  it("gives a capacitor at an ideal source the current of the slope (closed form)", () => {
    const elements = [V("v", "a", "0", 0), C("c", "a", "0", 1e-6)];
    const wave = { kind: "line", times: [0.001, 0.002, 0.004], values: [0, 5, -5] } as const;
    const run = followed(elements, { untilSeconds: 0.005, drives: [{ element: "v", field: "volts", wave }] });
    const [before, up, down, after] = run.samplesAt([0.0005, 0.0015, 0.003, 0.0045]).amps("c");
    near(before, 0, 1e-9);
    near(up, 5e-3, 1e-8);
    near(down, -5e-3, 1e-8);
    near(after, 0, 1e-8);
  });

  it("shares charge between capacitors at once where nothing limits the current (closed form)", () => {
    // 1 µF at 12 V onto 3 µF at 0 V through 1 mΩ: a quarter of the volts.
    const elements: CircuitElement[] = [
      C("a", "a", "0", 1e-6),
      { kind: "switch", id: "s", a: "a", b: "b", closed: false, closedOhms: 1e-3 },
      C("b", "b", "0", 3e-6),
    ];
    const close = {
      element: "s",
      field: "closed",
      wave: { kind: "steps", times: [0.01], values: [true] },
    } as const;
    const options = { untilSeconds: 0.02, start: "rest", initialVolts: { a: 12 }, drives: [close] } as const;
    const run = followed(elements, options);
    near(run.volts("a").at(-1), 3, 1e-6);
    near(run.volts("b").at(-1), 3, 1e-6);
  });
});

describe("changes of state", () => {
  it("closes a contact when an RC has risen to its threshold (closed form: RC·ln)", () => {
    const elements: CircuitElement[] = [
      V("v", "a", "0", 15),
      R("r", "a", "c", 1e4),
      C("c", "c", "0", 1e-6),
      {
        kind: "comparator",
        id: "k",
        a: "a",
        b: "out",
        positive: "c",
        negative: "0",
        thresholdVolts: 8,
        hysteresisVolts: 0.2,
        inputOhms: 1e12,
      },
      R("load", "out", "0", 100),
    ];
    const run = followed(elements, { untilSeconds: 0.02, start: "rest", ...tight });
    near(run.events[0]?.seconds, 1e-2 * Math.log(15 / (15 - 8.1)), 1e-8);
    expect(run.events).toHaveLength(1);
  });

  it("pulls a relay in when its coil's current has risen (closed form: L/R·ln)", () => {
    const elements: CircuitElement[] = [
      V("v", "a", "0", 12),
      {
        kind: "relay",
        id: "k",
        coilPlus: "a",
        coilMinus: "0",
        common: "a",
        normallyOpen: "out",
        ohms: 85,
        henries: 0.4,
        coreOhms: 1e9,
        pullInVolts: 6.8,
      },
      R("load", "out", "0", 100),
    ];
    const run = followed(elements, { untilSeconds: 0.02, start: "rest", ...tight });
    near(run.events[0]?.seconds, (0.4 / 85) * Math.log(12 / (12 - 6.8)), 1e-8);
  });
});

describe("the method", () => {
  it("is of third order: an eighth of the tolerance, half the step, an eighth of the error", () => {
    const elements = [V("v", "a", "0", 1), R("r", "a", "c", 1), C("c", "c", "0", 1)];
    const measured = [1e-4, 1e-5, 1e-6, 1e-7].map((relativeTolerance) => {
      const options = { untilSeconds: 3, start: "rest", maxStepSeconds: 3 } as const;
      const run = followed(elements, {
        ...options,
        relativeTolerance,
        voltTolerance: relativeTolerance / 10,
      });
      const volts = run.volts("c");
      const error = volts.reduce(
        (most, value, i) => Math.max(most, Math.abs(value - 1 + Math.exp(-(run.seconds[i] ?? 0)))),
        0,
      );
      return { steps: run.steps, error };
    });
    for (const [i, { steps, error }] of measured.entries()) {
      const rougher = measured[i - 1];
      if (!rougher) continue;
      const order = Math.log(rougher.error / error) / Math.log(steps / rougher.steps);
      expect(order).toBeGreaterThan(2.7);
      expect(order).toBeLessThan(3.6);
    }
  });
});
