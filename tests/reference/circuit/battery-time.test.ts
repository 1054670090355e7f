import { type Battery, type CircuitElement, type TransientOptions, transient } from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

const battery = (numbers: Partial<Battery> = {}): Battery => ({
  kind: "battery",
  id: "g",
  positive: "b",
  negative: "0",
  capacityAmpereHours: 60,
  ...numbers,
});
const drawn = (amps: number): CircuitElement => ({
  kind: "currentSource",
  id: "i",
  from: "b",
  to: "0",
  amps,
});

function follow(elements: readonly CircuitElement[], options: TransientOptions) {
  const result = transient(
    { ground: "0", elements },
    {
      relativeTolerance: 1e-6,
      record: { volts: ["b"], amps: ["g"], quantities: [{ element: "g", name: "stateOfCharge" }] },
      ...options,
    },
  );
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const step = (amps: number): Pick<TransientOptions, "drives"> => ({
  drives: [{ element: "i", field: "amps", wave: { kind: "steps", times: [1], values: [amps] } }],
});

describe("cranking", () => {
  it("dips at once by R·i, then by Rp·i with its time constant", () => {
    // So large a capacity that the charge stays where it is.
    const numbers = { capacityAmpereHours: 1e6, ohms: 4e-3, polarisationOhms: 2e-3, polarisationSeconds: 5 };
    const at = [0.5, 1.001, 3, 6, 11, 30];
    const run = follow([battery(numbers), drawn(0)], { untilSeconds: 30, at, ...step(200) });
    const volts = run.volts("b");
    at.forEach((t, k) => {
      const expected = t < 1 ? 12.7 : 12.7 - 0.8 - 0.4 * (1 - Math.exp(-(t - 1) / 5));
      expect(Math.abs(volts[k]! - expected)).toBeLessThan(1e-4);
    });
  });

  it("shows the starter's inrush: deepest at first, better as the engine turns", () => {
    const elements: CircuitElement[] = [
      battery(),
      { kind: "switch", id: "s", a: "b", b: "50", closed: false },
      {
        kind: "motor",
        id: "m",
        plus: "50",
        minus: "0",
        ohms: 0.015,
        motorConstant: 0.02,
        inertia: 0.02,
        loadTorque: 3,
      },
    ];
    const run = follow(elements, {
      untilSeconds: 2,
      drives: [{ element: "s", field: "closed", wave: { kind: "steps", times: [0.1], values: [true] } }],
    });
    const volts = run.volts("b");
    const least = Math.min(...volts);
    expect(volts[0]).toBeCloseTo(12.7, 6);
    expect(run.seconds[volts.indexOf(least)]).toBeLessThan(0.2);
    expect(volts.at(-1)).toBeGreaterThan(least + 0.5);
    // Minimum while cranking, common practice, no source: 9.6 V.
    expect(least).toBeGreaterThan(9.6);
  });
});

describe("charge", () => {
  it("counts ampere-hours", () => {
    const run = follow([battery({ stateOfCharge: 0.8 }), drawn(6)], { untilSeconds: 3600 });
    expect(run.quantity("g", "stateOfCharge").at(-1)).toBeCloseTo(0.8 - 6 / 60, 6);
    const back = follow([battery({ stateOfCharge: 0.3 }), drawn(-6)], { untilSeconds: 3600 });
    expect(back.quantity("g", "stateOfCharge").at(-1)).toBeCloseTo(0.3 + 6 / 60, 6);
  });

  it("fills up and no further, the current falling", () => {
    const elements: CircuitElement[] = [
      battery({ stateOfCharge: 0.6 }),
      { kind: "voltageSource", id: "v", positive: "b", negative: "0", volts: 14.4, ohms: 0.01 },
    ];
    const run = follow(elements, { untilSeconds: 24 * 3600, at: [10, 3600, 4 * 3600, 24 * 3600] });
    const charge = run.quantity("g", "stateOfCharge");
    const amps = run.amps("g");
    for (let k = 1; k < 4; k++) {
      expect(charge[k]!).toBeGreaterThan(charge[k - 1]!);
      expect(amps[k]!).toBeLessThan(amps[k - 1]!);
    }
    expect(charge[3]!).toBeGreaterThan(0.99);
    expect(charge[3]!).toBeLessThanOrEqual(1);
  });

  it("collapses when it is drained past empty, and never turns its poles", () => {
    const elements: CircuitElement[] = [
      battery({ stateOfCharge: 0.1 }),
      { kind: "resistor", id: "r", a: "b", b: "0", ohms: 1 },
    ];
    const run = follow(elements, { untilSeconds: 20 * 3600 });
    const volts = run.volts("b");
    expect(volts.at(-1)).toBeLessThan(2);
    expect(Math.min(...volts)).toBeGreaterThanOrEqual(0);
  });
});
