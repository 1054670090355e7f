import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CircuitElement, operatingPoint, type SolveOptions } from "../index";

const solved = (elements: readonly CircuitElement[], options?: SolveOptions) => {
  const result = operatingPoint({ ground: "0", elements }, options);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const volts = (value: number, positive = "a"): CircuitElement => ({
  kind: "voltageSource",
  id: `v${positive}`,
  positive,
  negative: "0",
  volts: value,
});
const resistor = (a: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id: `r${a}`,
  a,
  b: "0",
  ohms,
});

describe("diode", () => {
  const diode = (law: object = {}): CircuitElement => ({
    kind: "diode",
    id: "d",
    anode: "a",
    cathode: "0",
    ...law,
  });

  it("multiplies its current tenfold every 59.55 mV at 27 °C", () => {
    // Closed form: ln 10 · k · 300.15 K / q.
    const ratio = solved([volts(0.65955), diode()]).amps("d") / solved([volts(0.6), diode()]).amps("d");
    expect(ratio).toBeCloseTo(10, 2);
  });

  it("passes 1 mA backwards at its breakdown voltage", () => {
    expect(solved([volts(-6.2), diode({ breakdownVolts: 6.2 })]).amps("d")).toBeCloseTo(-1e-3, 9);
  });

  it("blocks with its saturation current and a leak of 1e-12 S", () => {
    expect(solved([volts(-12), diode({ saturationAmps: 1e-9 })]).amps("d")).toBeCloseTo(-1e-9 - 12e-12, 15);
  });

  it("adds its series resistance", () => {
    const bare = solved([volts(0.6), diode()]).amps("d");
    expect(solved([volts(0.6 + 10 * bare), diode({ seriesOhms: 10 })]).amps("d")).toBeCloseTo(bare, 12);
  });

  it("stays finite at an absurd voltage", () => {
    expect(Number.isFinite(solved([volts(1000), diode({ seriesOhms: 1 })]).amps("d"))).toBe(true);
  });
});

describe("filament", () => {
  const lamp: CircuitElement = { kind: "filament", id: "e", a: "a", b: "0", ratedVolts: 12, ratedWatts: 55 };

  it("draws its rated current at its rated voltage", () => {
    expect(solved([volts(12), lamp]).amps("e")).toBeCloseTo(55 / 12, 12);
  });

  it("is odd and rises with the voltage", () => {
    const voltage = fc.double({ min: 1e-6, max: 30, noNaN: true });
    fc.assert(
      fc.property(voltage, voltage, (p, q) => {
        const [low, high] = [Math.min(p, q), Math.max(p, q)];
        expect(solved([volts(-low), lamp]).amps("e")).toBe(-solved([volts(low), lamp]).amps("e"));
        if (high > low * (1 + 1e-9)) {
          expect(solved([volts(high), lamp]).amps("e")).toBeGreaterThan(solved([volts(low), lamp]).amps("e"));
        }
      }),
    );
  });
});

describe("regulator", () => {
  const regulated = (supply: number, load: number, law: object = {}): CircuitElement[] => [
    volts(supply, "in"),
    {
      kind: "regulator",
      id: "u",
      input: "in",
      output: "out",
      reference: "0",
      volts: 5,
      limitAmps: 0.1,
      dropoutVolts: 0.5,
      outputOhms: 0.01,
      ...law,
    },
    resistor("out", load),
  ];

  it("holds its voltage less the drop over its output resistance", () => {
    const point = solved(regulated(12, 100));
    expect(point.volts("out")).toBeCloseTo(5 / 1.0001, 9);
    expect(point.amps("u")).toBeCloseTo(5 / 100.01, 9);
  });

  it("turns to a constant current at its limit", () => {
    for (const load of [40, 10, 1, 1e-3]) {
      const point = solved(regulated(12, load));
      expect(point.amps("u")).toBeCloseTo(0.1, 9);
      expect(point.volts("out")).toBeCloseTo(0.1 * load, 9);
    }
  });

  it("follows a low input less its dropout and is off below", () => {
    expect(solved(regulated(4, 1e4)).volts("out")).toBeCloseTo(3.5, 4);
    expect(solved(regulated(0.3, 1e4)).volts("out")).toBeCloseTo(0, 6);
  });

  it("takes what it delivers, and its quiescent current, from the input", () => {
    const point = solved(regulated(12, 100, { quiescentAmps: 5e-3 }));
    expect(-point.amps("vin")).toBeCloseTo(point.amps("u") + 5e-3, 9);
  });

  it("passes nothing back when its output is pulled up", () => {
    const point = solved([...regulated(12, 1e4), volts(9, "out")]);
    expect(point.amps("u")).toBeCloseTo(0, 12);
  });

  it("never makes power, whatever is tied to it", () => {
    const any = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(any, any, (input, output) => {
        const point = solved([...regulated(input, 1e3, { quiescentAmps: 2e-3 }), volts(output, "out")]);
        const external = input * -point.amps("vin") + output * -point.amps("vout") - output ** 2 / 1e3;
        expect(external).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });

  it("fed the wrong way round by part of a volt passes its leak and nothing else", () => {
    // Down there the foot of its curve leaves the range of numbers; the stretch is where that happens.
    for (let k = 0; k < 300; k++) {
      const supply: CircuitElement = {
        kind: "voltageSource",
        id: "s",
        positive: "in",
        negative: "0",
        volts: -0.4 - k * 1e-3,
        ohms: 0.7 + k / 1000,
      };
      const law = { volts: 8, limitAmps: 1, dropoutVolts: 0.2, outputOhms: 1, quiescentAmps: 1.5e-3 };
      const regulator: CircuitElement = {
        kind: "regulator",
        id: "d",
        input: "in",
        output: "o",
        reference: "0",
        ...law,
      };
      const point = solved([supply, resistor("o", 2), regulator]);
      expect(Math.abs(point.volts("o"))).toBeLessThan(1e-11);
      expect(Math.abs(point.amps("d"))).toBeLessThan(1e-11);
    }
  });
});

describe("fallbacks", () => {
  const stack: CircuitElement[] = [
    volts(12),
    { kind: "resistor", id: "r", a: "a", b: "n0", ohms: 220 },
    ...Array.from(
      { length: 6 },
      (_, k): CircuitElement => ({
        kind: "diode",
        id: `d${k}`,
        anode: `n${k}`,
        cathode: k === 5 ? "0" : `n${k + 1}`,
      }),
    ),
  ];
  // So few iterations that Newton alone gives up, as the first line checks.
  const few = { maxIterations: 10, shuntSteps: 0, sourceSteps: 0 };

  it.each([
    ["a fading leak", { ...few, shuntSteps: 100 }],
    ["rising sources", { ...few, sourceSteps: 40 }],
  ])("reach the same answer by %s", (_name, options) => {
    expect(operatingPoint({ ground: "0", elements: stack }, few)).toMatchObject({
      error: { code: "no_convergence" },
    });
    expect(solved(stack, options).volts("n0")).toBeCloseTo(solved(stack).volts("n0"), 9);
  });
});
