import { describe, expect, it } from "vitest";
import { type CircuitElement, operatingPoint } from "../index";

describe("a driver whose supply has come loose", () => {
  const around: readonly CircuitElement[] = [
    { kind: "voltageSource", id: "g", positive: "n1", negative: "0", volts: 6 },
    { kind: "resistor", id: "load", a: "n1", b: "out", ohms: 2 },
  ];
  const stage = { kind: "driver", id: "q", type: "lowSide", output: "out", ground: "0", onOhms: 1 } as const;

  it.each([1e-3, 0])("holds it at its output, where the pull-up of %s A does not pull", (pullUpAmps) => {
    const elements = [...around, { ...stage, supply: "loose", on: true, pullUpAmps }];
    const point = operatingPoint({ ground: "0", elements });
    if (!point.ok) throw new Error(point.error.message);
    // Divider: 6 V · 1 Ω / (2 Ω + 1 Ω); no current flows from the loose end.
    expect(point.value.volts("out")).toBeCloseTo(2, 9);
    expect(point.value.volts("loose")).toBeCloseTo(2, 9);
  });
});
