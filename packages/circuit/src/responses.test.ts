import { describe, expect, it } from "vitest";
import { prepareCircuit } from "./index";
import type { Network } from "./network";

const must = <Value>(result: { ok: true; value: Value } | { ok: false; error: unknown }): Value => {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};

/** A divider of 100 Ω over 300 Ω at 12 V, and a diode from its middle to another 1 kΩ. */
const network = (withDiode: boolean): Network => ({
  ground: "0",
  elements: [
    { kind: "voltageSource", id: "supply", positive: "in", negative: "0", volts: 12 },
    { kind: "resistor", id: "upper", a: "in", b: "mid", ohms: 100 },
    { kind: "resistor", id: "lower", a: "mid", b: "0", ohms: 300 },
    ...(withDiode
      ? ([
          { kind: "diode", id: "diode", anode: "mid", cathode: "out" },
          { kind: "resistor", id: "load", a: "out", b: "0", ohms: 1000 },
        ] as const)
      : []),
  ],
});

describe("responses of a solved network", () => {
  it("are its transfer resistances: 100 Ω beside 300 Ω are 75 Ω", () => {
    const { ohms, holds, shifted } = must(must(prepareCircuit(network(false))).responses([["mid", "0"]]));
    expect(ohms(0, "mid")).toBeCloseTo(75, 9);
    expect(ohms(0, "in")).toBeCloseTo(0, 9);
    expect(holds([0.02])).toBe(true);
    const point = shifted([0.02]);
    expect(point.volts("mid")).toBeCloseTo(9 + 0.02 * 75, 9);
    expect(point.amps("lower")).toBeCloseTo(10.5 / 300, 9);
  });

  it("leave the solution as it was", () => {
    const circuit = must(prepareCircuit(network(true)));
    const before = must(circuit.operatingPoint());
    const answers = must(circuit.responses([["out", "0"]]));
    answers.shifted([0.003]);
    const after = must(circuit.operatingPoint());
    for (const node of circuit.nodes) expect(after.volts(node)).toBeCloseTo(before.volts(node), 9);
    expect(after.amps("diode")).toBeCloseTo(before.amps("diode"), 9);
  });

  it("say when a curve bends on the way", () => {
    const { holds } = must(must(prepareCircuit(network(true))).responses([["out", "0"]]));
    // 10 mA into the load lift it above the middle: the diode blocks, which no straight line from here knows.
    expect(holds([0.01])).toBe(false);
    expect(holds([1e-8])).toBe(true);
  });

  it("refuse a node that is not there", () => {
    const answers = must(prepareCircuit(network(false))).responses([["mid", "nowhere"]]);
    expect(answers).toMatchObject({ ok: false, error: { code: "unknown_node", node: "nowhere" } });
  });
});
