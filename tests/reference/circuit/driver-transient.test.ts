import { type CircuitElement, type TransientOptions, transient } from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

// Output stages and comparators in time. "Closed form" is computed here by another route than the package's.

function follow(elements: readonly CircuitElement[], options: TransientOptions) {
  const result = transient({ ground: "0", elements }, options);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}
const source = (volts: number, positive = "30"): CircuitElement => ({
  kind: "voltageSource",
  id: `v${positive}`,
  positive,
  negative: "0",
  volts,
});
const resistor = (id: string, a: string, b: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});
const exact = (value: number | undefined, expected: number, relative: number) =>
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

describe("a stage that trips", () => {
  const short = (law: object): CircuitElement[] => [
    source(12),
    {
      kind: "driver",
      id: "A1",
      type: "highSide",
      output: "o",
      supply: "30",
      on: true,
      onOhms: 0.05,
      limitAmps: 10,
      leakAmps: 0,
      tripSeconds: 4e-3,
      ...law,
    },
    resistor("load", "o", "0", 6),
    { kind: "switch", id: "S1", a: "o", b: "0", closed: false, closedOhms: 0.01 },
  ];
  const closing = {
    element: "S1",
    field: "closed",
    wave: { kind: "steps", times: [0.01], values: [true] },
  } as const;

  it("limits for its time and then lets go for good", () => {
    const run = follow(short({}), { untilSeconds: 0.2, drives: [closing], at: [5e-3, 0.012, 0.1] });
    expect(run.events).toEqual([{ seconds: expect.any(Number), element: "A1", state: 1 }]);
    exact(run.events[0]?.seconds, 0.014, 1e-6);
    const amps = [...run.amps("A1")].map((value) => -value);
    exact(amps[0], 12 / 6.05, 1e-4);
    exact(amps[1], 10, 1e-6);
    expect(Math.abs(amps[2] ?? Number.NaN)).toBeLessThan(1e-9);
  });

  it("tries again after its pause, with a counter that has fallen to exp(−5)", () => {
    const run = follow(short({ retrySeconds: 0.05 }), {
      untilSeconds: 0.13,
      drives: [closing],
      relativeTolerance: 1e-6,
      internalTolerance: 10,
    });
    // Closed form: the counter fills from 0 in 4 ms, from exp(−5) in that part less.
    const again = 4e-3 * (1 - Math.exp(-5));
    const expected = [0.014, 0.064, 0.064 + again, 0.114 + again, 0.114 + 2 * again];
    expect(run.events.map((event) => event.state)).toEqual([1, 0, 1, 0, 1]);
    run.events.forEach((event, i) => {
      exact(event.seconds, expected[i] ?? Number.NaN, 1e-5);
    });
  });

  it("forgets a trip when the command is withdrawn, and does not trip on a load within its limit", () => {
    const command = {
      element: "A1",
      field: "on",
      wave: { kind: "steps", times: [0.03, 0.04], values: [false, true] },
    } as const;
    const opening = {
      ...closing,
      wave: { kind: "steps", times: [0.01, 0.02], values: [true, false] },
    } as const;
    const run = follow(short({}), { untilSeconds: 0.1, drives: [opening, command], at: [0.025, 0.09] });
    expect(run.events.map((event) => event.state)).toEqual([1, 0]);
    exact(run.events[1]?.seconds, 0.03, 1e-6);
    expect(Math.abs(run.amps("A1")[0] ?? Number.NaN)).toBeLessThan(1e-9);
    exact(run.amps("A1")[1], -12 / 6.05, 1e-4);
  });
});

describe("a coil that a low side lets go", () => {
  it("drives the output to the clamp and loses its current there", () => {
    const elements: CircuitElement[] = [
      source(12),
      { kind: "inductor", id: "L1", a: "30", b: "m", henries: 0.02 },
      resistor("R1", "m", "o", 11.98),
      {
        kind: "driver",
        id: "A1",
        type: "lowSide",
        output: "o",
        ground: "0",
        on: true,
        onOhms: 0.02,
        leakAmps: 0,
        clampVolts: 45,
      },
    ];
    const off = {
      element: "A1",
      field: "on",
      wave: { kind: "steps", times: [1e-3], values: [false] },
    } as const;
    const run = follow(elements, { untilSeconds: 3e-3, drives: [off], at: [1.2e-3, 2.9e-3] });
    // The clamp, 45 V at 1 mA and n·k·T/q steep, is at 45.17 V between 1 A and 0.5 A (25 °C).
    const clamp = 45 + 0.0257 * Math.log(0.8 / 1e-3);
    exact(run.volts("o")[0], clamp, 1e-3);
    // Closed form: L·di/dt = 12 − clamp − 11.98·i from 1 A on.
    const rest = (12 - clamp) / 11.98;
    exact(run.amps("L1")[0], rest + (1 - rest) * Math.exp(-(2e-4 * 11.98) / 0.02), 1e-3);
    expect(Math.abs(run.amps("L1")[1] ?? Number.NaN)).toBeLessThan(1e-6);
  });
});

describe("a comparator and a capacitor", () => {
  it("swing between the two thresholds in the time of the exponentials", () => {
    const [charge, discharge, farads] = [1e4, 1e3, 1e-6];
    const elements: CircuitElement[] = [
      source(5),
      resistor("R1", "30", "c", charge),
      { kind: "capacitor", id: "C1", a: "c", b: "0", farads },
      {
        kind: "comparator",
        id: "A1",
        a: "c",
        b: "0",
        positive: "c",
        negative: "0",
        thresholdVolts: 2.5,
        hysteresisVolts: 1,
        closedOhms: discharge,
        openOhms: 1e12,
        inputOhms: 1e12,
      },
    ];
    const run = follow(elements, { untilSeconds: 0.05, start: "rest", relativeTolerance: 1e-6 });
    // Closed form: from 2 V to 3 V towards 5 V through 10 kΩ, back towards 5/11 V through 10 kΩ ∥ 1 kΩ.
    const up = charge * farads * Math.log((5 - 2) / (5 - 3));
    const low = (5 * discharge) / (charge + discharge);
    const down = ((charge * discharge) / (charge + discharge)) * farads * Math.log((3 - low) / (2 - low));
    const first = charge * farads * Math.log(5 / (5 - 3));
    expect(run.events.length).toBeGreaterThanOrEqual(14);
    run.events.forEach((event, i) => {
      const expected = first + Math.floor(i / 2) * (up + down) + (i % 2) * down;
      expect(event.state).toBe(i % 2 === 0 ? 1 : 0);
      exact(event.seconds, expected, 1e-5);
    });
  });
});
