import {
  type CircuitElement,
  type Motor,
  operatingPoint,
  type TransientOptions,
  transient,
} from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

// Closed forms of the motor's equations, worked out by hand; nothing here goes through the solver's own laws.

const motor = (numbers: Partial<Motor> = {}): Motor => ({
  kind: "motor",
  id: "m",
  plus: "a",
  minus: "0",
  ohms: 0.5,
  motorConstant: 0.05,
  inertia: 1e-4,
  henries: 1e-8,
  ...numbers,
});
const supply: CircuitElement = { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts: 12 };
const resistor = (ohms: number): CircuitElement => ({ kind: "resistor", id: "r", a: "a", b: "0", ohms });

function follow(
  elements: readonly CircuitElement[],
  options: Partial<TransientOptions> & { untilSeconds: number },
) {
  const quantities = ["radiansPerSecond", "celsiusWinding"].map((name) => ({ element: "m", name }));
  const heated = elements.some(
    (element) => element.kind === "motor" && element.windingToHousing !== undefined,
  );
  const result = transient(
    { ground: "0", elements },
    {
      start: "rest",
      relativeTolerance: 1e-6,
      record: {
        volts: ["a"],
        amps: ["m"],
        quantities: heated ? [...quantities, { element: "m", name: "celsiusHousing" }] : quantities,
      },
      ...options,
    },
  );
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

/** Largest difference between two rows of numbers, as a part of the largest expected. */
function worst(actual: Float64Array, expected: readonly number[]): number {
  const scale = Math.max(...expected.map(Math.abs));
  return Math.max(...expected.map((value, k) => Math.abs(value - (actual[k] ?? Number.NaN)))) / scale;
}

const timesTo = (until: number, count = 20) =>
  Array.from({ length: count }, (_, k) => ((k + 1) * until) / count);

describe("starting", () => {
  it("runs up with the mechanical time constant J·R/K² = 20 ms where the inductance is nothing", () => {
    const at = timesTo(0.1);
    const run = follow([supply, motor()], { untilSeconds: 0.1, at });
    expect(
      worst(
        run.quantity("m", "radiansPerSecond"),
        at.map((t) => 240 * (1 - Math.exp(-t / 0.02))),
      ),
    ).toBeLessThan(1e-4);
    expect(
      worst(
        run.amps("m"),
        at.map((t) => 24 * Math.exp(-t / 0.02)),
      ),
    ).toBeLessThan(1e-4);
  });

  it.each([
    ["overdamped", 1e-3],
    ["ringing", 1e-2],
  ])("follows both poles with %s L = %d H", (_name, henries) => {
    const at = timesTo(0.15, 40);
    const run = follow([supply, motor({ henries })], { untilSeconds: 0.15, at });
    // L·J·w'' + R·J·w' + K²·w = K·v from rest.
    const half = 0.5 / (2 * henries);
    const natural = 0.05 ** 2 / (henries * 1e-4);
    const inner = half ** 2 - natural;
    const speed = (t: number): number => {
      const root = Math.sqrt(Math.abs(inner));
      const [even, odd] =
        inner > 0
          ? [Math.cosh(root * t), (half / root) * Math.sinh(root * t)]
          : [Math.cos(root * t), (half / root) * Math.sin(root * t)];
      return 240 * (1 - Math.exp(-half * t) * (even + odd));
    };
    expect(worst(run.quantity("m", "radiansPerSecond"), at.map(speed))).toBeLessThan(1e-4);
  });

  it("draws its stall current at first and its running current at last", () => {
    const run = follow([supply, motor({ henries: 1e-4, loadTorque: 0.1 })], { untilSeconds: 0.3 });
    const amps = run.amps("m");
    expect(Math.max(...amps)).toBeGreaterThan(0.93 * 24);
    expect(Math.max(...amps)).toBeLessThan(24);
    expect(amps.at(-1)).toBeCloseTo(0.1 / 0.05, 3);
  });

  it("spends what it takes on heat, on its rotor and on its field", () => {
    const count = 4000;
    const at = Array.from({ length: count + 1 }, (_, k) => (k * 0.1) / count);
    const run = follow([supply, motor({ henries: 1e-3 })], { untilSeconds: 0.1, at });
    const amps = run.amps("m");
    const speed = run.quantity("m", "radiansPerSecond").at(-1) ?? Number.NaN;
    const integral = (of: (i: number) => number): number => {
      let sum = 0;
      // Simpson's rule.
      amps.forEach((i, k) => {
        sum += of(i) * (k === 0 || k === count ? 1 : k % 2 === 1 ? 4 : 2);
      });
      return (sum * 0.1) / count / 3;
    };
    const taken = integral((i) => 12 * i);
    const kept =
      integral((i) => 0.5 * i * i) + 0.5e-4 * speed ** 2 + 0.5e-3 * (amps.at(-1) ?? Number.NaN) ** 2;
    expect(kept / taken).toBeCloseTo(1, 4);
  });
});

describe("running out", () => {
  it("slows evenly under dry friction: J·w/T = 1 s, disconnected", () => {
    const at = [0.25, 0.5, 0.75];
    const run = follow([resistor(1e9), motor({ coulombFriction: 0.02, startRadiansPerSecond: 200 })], {
      untilSeconds: 1.2,
      at: [...at, 1.2],
    });
    const speed = run.quantity("m", "radiansPerSecond");
    expect(worst(speed.slice(0, 3), [150, 100, 50])).toBeLessThan(1e-4);
    expect(Math.abs(speed[3] ?? Number.NaN)).toBeLessThan(0.2);
  });

  it("brakes itself into a resistor with J·(R + r)/K² = 60 ms, generating meanwhile", () => {
    const at = timesTo(0.2);
    const run = follow([resistor(1), motor({ startRadiansPerSecond: 200 })], { untilSeconds: 0.2, at });
    const speed = at.map((t) => 200 * Math.exp(-t / 0.06));
    expect(worst(run.quantity("m", "radiansPerSecond"), speed)).toBeLessThan(1e-4);
    expect(
      worst(
        run.volts("a"),
        speed.map((w) => (0.05 * w) / 1.5),
      ),
    ).toBeLessThan(1e-4);
  });
});

describe("heating at a constant current", () => {
  // R(T) rises along a straight line, so both temperatures obey a linear system, x' = M·x + c, solved here by its modes.
  it("follows two-node heat with copper's temperature law", () => {
    const [rwh, rha, cw, ch, ambient, amps, ohms] = [0.5, 1.5, 60, 900, 25, 15, 0.15] as const;
    const perKelvin = amps ** 2 * ohms * 0.00393;
    const base = amps ** 2 * ohms * (1 - 20 * 0.00393);
    const m = [
      [(perKelvin - 1 / rwh) / cw, 1 / (rwh * cw)],
      [1 / (rwh * ch), -(1 / rwh + 1 / rha) / ch],
    ] as const;
    const [[a, b], [c, d]] = m;
    const source = [base / cw, ambient / (rha * ch)] as const;
    const det = a * d - b * c;
    const steady = [(-d * source[0] + b * source[1]) / det, (c * source[0] - a * source[1]) / det] as const;
    const mean = (a + d) / 2;
    const root = Math.sqrt(mean ** 2 - det);
    const start = [ambient - steady[0], ambient - steady[1]] as const;
    const winding = (t: number): number => {
      const even = Math.cosh(root * t) * start[0];
      const odd = (Math.sinh(root * t) / root) * ((a - mean) * start[0] + b * start[1]);
      return steady[0] + Math.exp(mean * t) * (even + odd);
    };
    const at = [30, 60, 300, 1200, 3600];
    const source15: CircuitElement = { kind: "currentSource", id: "i", from: "0", to: "a", amps };
    const heated = motor({
      locked: true,
      ohms,
      windingToHousing: rwh,
      housingToAmbient: rha,
      windingCapacity: cw,
      housingCapacity: ch,
      ambientCelsius: ambient,
      celsius: ambient,
    });
    const run = follow([source15, heated], { untilSeconds: 3600, at });
    expect(worst(run.quantity("m", "celsiusWinding"), at.map(winding))).toBeLessThan(1e-4);
    // Sooner or later it stands where the operating point in balance stands.
    const point = operatingPoint({ ground: "0", elements: [source15, { ...heated, heatInBalance: true }] });
    if (!point.ok) throw new Error(point.error.message);
    expect(point.value.quantity("m", "celsiusWinding")).toBeCloseTo(steady[0], 6);
    expect(point.value.quantity("m", "celsiusHousing")).toBeCloseTo(steady[1], 6);
  });
});
