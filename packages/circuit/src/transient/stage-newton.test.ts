import { describe, expect, it } from "vitest";
import { type CircuitElement, transient } from "../index";

describe("a stage of a step", () => {
  it.each([1e-3, 1e-4, 1e-5])(
    "is not done while currents do not add up, however short the correction, at %s",
    (relativeTolerance) => {
      const elements: readonly CircuitElement[] = [
        { kind: "voltageSource", id: "g", positive: "in", negative: "0", volts: 0, ohms: 0.01 },
        { kind: "resistor", id: "load", a: "o", b: "0", ohms: 1000 },
        {
          kind: "regulator",
          id: "u",
          input: "in",
          output: "o",
          reference: "0",
          volts: 5,
          limitAmps: 2.23,
          outputOhms: 0.03,
        },
      ];
      const wave = { kind: "pulse", low: 0, high: 12, hertz: 250, duty: 0.4 } as const;
      const drives = [{ element: "g", field: "volts", wave }];
      const run = transient({ ground: "0", elements }, { untilSeconds: 4e-3, drives, relativeTolerance });
      if (!run.ok) throw new Error(run.error.message);
      // A dead supply leaves the rail at 0 V; half a volt below, each correction is some 70 µV long.
      const { min, max } = run.value.measure({ plus: "o" });
      expect(min).toBeGreaterThan(-1e-5);
      expect(max).toBeCloseTo(5, 2);
    },
  );
});
