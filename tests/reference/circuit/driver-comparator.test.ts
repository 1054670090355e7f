import { type CircuitElement, operatingPoint, prepareCircuit } from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

// A voltage-controlled contact with hysteresis.

const unwrap = <T>(result: { ok: true; value: T } | { ok: false; error: { message: string } }): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const source = (id: string, positive: string, volts: number): CircuitElement => ({
  kind: "voltageSource",
  id,
  positive,
  negative: "0",
  volts,
});
const comparator = (law: object = {}): CircuitElement => ({
  kind: "comparator",
  id: "A1",
  a: "out",
  b: "0",
  positive: "sense",
  negative: "0",
  thresholdVolts: 2.5,
  hysteresisVolts: 0.5,
  ...law,
});
const pullUp: CircuitElement = { kind: "resistor", id: "R1", a: "5V", b: "out", ohms: 999 };
const around = (law: object = {}): CircuitElement[] => [
  source("G1", "5V", 5),
  source("G2", "sense", 0),
  pullUp,
  comparator(law),
];

/** Output at each of the sensed voltages in turn, the state kept from one to the next. */
function follow(law: object, volts: readonly number[]): readonly number[] {
  const circuit = unwrap(prepareCircuit({ ground: "0", elements: around(law) }));
  return volts.map((sensed) => {
    unwrap(circuit.set("G2", { volts: sensed }));
    return Math.round(unwrap(circuit.operatingPoint()).volts("out") * 1000) / 1000;
  });
}

describe("comparator", () => {
  it("closes above its threshold plus half the hysteresis and opens below it less the other half", () => {
    // Closed form: a divider of 999 Ω and 1 Ω.
    expect(follow({}, [0, 2.7, 2.76, 2.3, 2.24, 2.7])).toEqual([5, 5, 0.005, 0.005, 5, 5]);
  });

  it("works the other way round", () => {
    expect(follow({ closesBelow: true }, [5, 2.3, 2.24, 2.7, 2.76])).toEqual([5, 5, 0.005, 0.005, 5]);
  });

  it("starts where it is told, within the hysteresis", () => {
    expect(follow({ initiallyClosed: true }, [2.5])).toEqual([0.005]);
    expect(follow({}, [2.5])).toEqual([5]);
  });

  it("reports its state and the amps through its contact", () => {
    const elements = around().map((e) => (e.id === "G2" ? source("G2", "sense", 4) : e));
    const point = unwrap(operatingPoint({ ground: "0", elements }));
    expect(point.quantity("A1", "isClosed")).toBe(1);
    expect(point.amps("A1")).toBeCloseTo(5e-3, 12);
  });

  it("loads what it senses by its input resistance alone", () => {
    const elements: CircuitElement[] = [
      source("G1", "5V", 5),
      pullUp,
      { kind: "resistor", id: "R2", a: "5V", b: "sense", ohms: 1e6 },
      comparator({ inputOhms: 1e6 }),
    ];
    expect(unwrap(operatingPoint({ ground: "0", elements })).volts("sense")).toBeCloseTo(2.5, 9);
  });

  it("that undoes its own cause has no rest, and is named", () => {
    // Closing pulls the sensed node down: a relaxation oscillator without its capacitor.
    const elements = [source("G1", "5V", 5), pullUp, comparator({ a: "sense" }), source("G2", "x", 0)].map(
      (e) => (e.id === "R1" ? ({ ...pullUp, b: "sense" } as CircuitElement) : e),
    );
    expect(operatingPoint({ ground: "0", elements })).toMatchObject({
      ok: false,
      error: { code: "no_convergence", element: "A1" },
    });
  });
});
