import { type CircuitElement, type TransientOptions, transient } from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

// First- and second-order circuits whose waveforms have a closed form (any textbook of circuit theory); the RC and RL
// numbers are those of Lessons in Electric Circuits I, ch. 16, from memory.

const tight = { relativeTolerance: 1e-8, voltTolerance: 1e-9, ampTolerance: 1e-9 };

function follow(elements: readonly CircuitElement[], options: Omit<TransientOptions, "untilSeconds">) {
  const untilSeconds = Math.max(...(options.at ?? []));
  const result = transient({ ground: "0", elements }, { ...tight, ...options, untilSeconds });
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const supply = (volts: number): CircuitElement => ({
  kind: "voltageSource",
  id: "v",
  positive: "a",
  negative: "0",
  volts,
});
const resistor = (ohms: number): CircuitElement => ({ kind: "resistor", id: "r", a: "a", b: "b", ohms });

describe("15 V through 10 kΩ into an empty 100 µF", () => {
  const elements: CircuitElement[] = [
    supply(15),
    resistor(10e3),
    { kind: "capacitor", id: "c", a: "b", b: "0", farads: 100e-6 },
  ];
  it("has 9.4818 V after 1 s and 14.989 V after 7.25 s", () => {
    const volts = follow(elements, { start: "rest", at: [1, 7.25] }).volts("b");
    expect(volts[0]).toBeCloseTo(9.481809, 5);
    expect(volts[1]).toBeCloseTo(14.98935, 5);
  });
});

describe("15 V through 3 Ω into 1 H", () => {
  const elements: CircuitElement[] = [
    supply(15),
    resistor(3),
    { kind: "inductor", id: "l", a: "b", b: "0", henries: 1 },
  ];
  it("carries 3.1606 A after a third of a second and 4.9999 A after 3.5 s", () => {
    const amps = follow(elements, { start: "rest", at: [1 / 3, 3.5] }).amps("l");
    expect(amps[0]).toBeCloseTo(3.160602, 5);
    expect(amps[1]).toBeCloseTo(4.999862, 5);
  });
});

describe("12 V switched onto R, 10 mH and 100 µF in series", () => {
  const [henries, farads, volts] = [10e-3, 100e-6, 12];
  const times = Array.from({ length: 60 }, (_, i) => 5e-4 * (i + 1));
  const natural = 1 / Math.sqrt(henries * farads);
  /** Volts at the capacitor with damping a = R/2L above, at and below the natural frequency w. */
  const closedForm = (ohms: number, t: number): number => {
    const a = ohms / (2 * henries);
    const beat = Math.sqrt(Math.abs(natural ** 2 - a ** 2));
    if (Math.abs(a - natural) < 1e-9 * natural) return volts * (1 - Math.exp(-a * t) * (1 + a * t));
    const [swing, turn] =
      a < natural ? [Math.cos(beat * t), Math.sin(beat * t)] : [Math.cosh(beat * t), Math.sinh(beat * t)];
    return volts * (1 - Math.exp(-a * t) * (swing + (a / beat) * turn));
  };
  it.each([0.5, 4, 20, 80, 400])("follows the closed form with %d ohms", (ohms) => {
    const elements: CircuitElement[] = [
      supply(volts),
      resistor(ohms),
      { kind: "inductor", id: "l", a: "b", b: "c", henries },
      { kind: "capacitor", id: "c", a: "c", b: "0", farads },
    ];
    const samples = follow(elements, { start: "rest", at: times }).volts("c");
    const worst = Math.max(
      ...times.map((t, i) => Math.abs((samples[i] ?? Number.NaN) - closedForm(ohms, t))),
    );
    expect(worst).toBeLessThan(3e-5 * volts);
  });
});

describe("a sine of 50 Hz through 100 Ω into 47 µF", () => {
  it("settles to the amplitude and phase of the complex calculation", () => {
    const [ohms, farads, amplitude, hertz] = [100, 47e-6, 10, 50];
    const omega = 2 * Math.PI * hertz;
    const [real, imaginary] = [1, omega * ohms * farads];
    const size = amplitude / Math.hypot(real, imaginary);
    const lag = Math.atan2(imaginary, real);
    const at = Array.from({ length: 40 }, (_, i) => 0.2 + i * 1e-3);
    const elements: CircuitElement[] = [
      supply(0),
      resistor(ohms),
      { kind: "capacitor", id: "c", a: "b", b: "0", farads },
    ];
    const wave = { kind: "sine", amplitude, hertz } as const;
    const samples = follow(elements, {
      start: "rest",
      at,
      drives: [{ element: "v", field: "volts", wave }],
    }).volts("b");
    // What is left of the start after 0.2 s: exp(−42).
    for (const [i, t] of at.entries()) expect(samples[i]).toBeCloseTo(size * Math.sin(omega * t - lag), 4);
  });
});
