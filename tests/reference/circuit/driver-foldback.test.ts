import { type CircuitElement, operatingPoint, prepareCircuit } from "@probeworthy/circuit";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { type NgspiceEngine, startEngine } from "./ngspice-engine";

// A sensor supply that folds back into a short, and one whose rail is pulled above its own supply.

const unwrap = <T>(result: { ok: true; value: T } | { ok: false; error: { message: string } }): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const source = (volts: number, positive = "in"): CircuitElement => ({
  kind: "voltageSource",
  id: `v${positive}`,
  positive,
  negative: "0",
  volts,
});
const load = (ohms: number): CircuitElement => ({ kind: "resistor", id: "load", a: "out", b: "0", ohms });
const regulator = (law: object = {}): CircuitElement => ({
  kind: "regulator",
  id: "A1",
  input: "in",
  output: "out",
  reference: "0",
  volts: 5,
  limitAmps: 0.2,
  foldbackAmps: 0.05,
  ...law,
});
const solved = (elements: readonly CircuitElement[]) => unwrap(operatingPoint({ ground: "0", elements }));

const exact = (value: number, expected: number, relative = 1e-12, absolute = 0) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected) + absolute);

describe("fold-back", () => {
  it.each([1e-6, 0.01, 1, 5, 10, 15, 20, 24])("meets a load of %d Ω where both lines cross", (ohms) => {
    // Closed form: v/R = 0.05 + (0.2 − 0.05)·v/5.
    const point = solved([source(12), regulator(), load(ohms)]);
    exact(point.volts("out"), 0.05 / (1 / ohms - 0.15 / 5), 1e-6);
    exact(point.amps("A1"), point.volts("out") / ohms, 1e-9, 1e-11);
  });

  it.each([25.5, 30, 100, 1e4])("regulates as ever into %d Ω", (ohms) => {
    exact(solved([source(12), regulator(), load(ohms)]).volts("out"), (5 * ohms) / (ohms + 0.01), 1e-6);
  });

  it("is the plain limit when both currents are equal", () => {
    for (const ohms of [1, 20, 24.9, 25.1, 1e3]) {
      const plain: CircuitElement = {
        kind: "regulator",
        id: "A1",
        input: "in",
        output: "out",
        reference: "0",
        volts: 5,
        limitAmps: 0.2,
      };
      const folded = solved([source(12), regulator({ foldbackAmps: 0.2 }), load(ohms)]);
      expect(folded.volts("out")).toBe(solved([source(12), plain, load(ohms)]).volts("out"));
    }
  });

  it("supplies little more than its short-circuit current below ground", () => {
    const point = solved([source(12), source(-3, "out"), regulator()]);
    expect(point.amps("A1")).toBeGreaterThan(0.04);
    expect(point.amps("A1")).toBeLessThanOrEqual(0.05);
  });

  it("finds the one answer, cold and warm, into any resistance and without continuation", () => {
    const decade = (low: number, high: number) =>
      fc.double({ min: low, max: high, noNaN: true }).map((d) => 10 ** d);
    const shape = fc.record({ limit: decade(-2, 0), fold: fc.double({ min: 0.02, max: 0.95, noNaN: true }) });
    fc.assert(
      fc.property(
        shape,
        fc.array(decade(-4, 4), { minLength: 2, maxLength: 5 }),
        ({ limit, fold }, loads) => {
          const law = { limitAmps: limit, foldbackAmps: fold * limit };
          const circuit = unwrap(
            prepareCircuit({ ground: "0", elements: [source(12), regulator(law), load(1)] }),
          );
          for (const ohms of loads) {
            // Within two per cent of the corner both answers are rounded off.
            if (Math.abs(ohms * limit - 5) < 0.1) continue;
            unwrap(circuit.set("load", { ohms }));
            const point = unwrap(circuit.operatingPoint({ shuntSteps: 0, sourceSteps: 0 }));
            const isOver = ohms * limit < 5;
            const volts = isOver
              ? (fold * limit) / (1 / ohms - ((1 - fold) * limit) / 5)
              : (5 * ohms) / (ohms + 0.01);
            exact(point.volts("out"), volts, 1e-5, 1e-6);
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  it("settles with filaments, diodes and a dip of the supply too", () => {
    const lamp: CircuitElement = {
      kind: "filament",
      id: "E1",
      a: "out",
      b: "0",
      ratedVolts: 5,
      ratedWatts: 0.5,
    };
    const circuit = unwrap(
      prepareCircuit({
        ground: "0",
        elements: [
          source(12),
          regulator(),
          lamp,
          { kind: "diode", id: "D1", anode: "0", cathode: "out" },
          load(1e3),
        ],
      }),
    );
    const lit = unwrap(circuit.operatingPoint()).volts("out");
    exact(lit, 5, 1e-3);
    unwrap(circuit.set("load", { ohms: 0.1 }));
    expect(unwrap(circuit.operatingPoint()).volts("out")).toBeLessThan(0.01);
    unwrap(circuit.set("load", { ohms: 1e3 }));
    expect(unwrap(circuit.operatingPoint()).volts("out")).toBeCloseTo(lit, 6);
    for (const volts of [6, 4, 0.5, 12]) {
      unwrap(circuit.set("vin", { volts }));
      const out = unwrap(circuit.operatingPoint()).volts("out");
      expect(out).toBeLessThanOrEqual(Math.max(0, volts - 0.5) + 1e-3);
      if (volts === 12) expect(out).toBeCloseTo(lit, 6);
    }
  });

  it("says so when a load takes more than the fold-back current at any voltage, within its limits", () => {
    const sink: CircuitElement = { kind: "currentSource", id: "I1", from: "out", to: "0", amps: 0.3 };
    const result = operatingPoint({ ground: "0", elements: [source(12), regulator(), sink, load(1e3)] });
    if (result.ok) expect(result.value.volts("out")).toBeLessThan(-100);
    else expect(result.error.code).toBe("no_convergence");
  });

  it("refuses more into a short than at the nominal output", () => {
    const result = operatingPoint({
      ground: "0",
      elements: [source(12), regulator({ foldbackAmps: 0.3 }), load(1)],
    });
    expect(result).toMatchObject({
      error: { code: "invalid_element", element: "A1", field: "foldbackAmps" },
    });
  });

  let ngspice: NgspiceEngine;
  beforeAll(async () => {
    ngspice = await startEngine();
  });

  it("agrees with its published equations in ngspice 45", async () => {
    const softplus = (x: string) => `(max(${x},0)+ln(1+exp(-abs(${x}))))`;
    const fold = 0.05 / 0.2;
    const end = 0.05;
    const bend = end / 25;
    const share = `(${fold}+${1 - fold}*(${bend}*${softplus(`((v(out)/5+${end})/${bend})`)}-${end}))`;
    /** Amps that the output supplies, held at `volts` or swept. */
    const amps = async (volts: number, command: string) => {
      const { columns, complaints } = await ngspice.run([
        "vi in 0 12",
        `vo out 0 ${volts}`,
        "bz z 0 v=(5-v(out))/(0.01*2e-4)",
        `bc c 0 v=1000*${share}`,
        `bo in out i=2e-4*(${softplus("v(z)")}-${softplus("(v(z)-v(c))")})`,
        "rk out 0 1e12",
        ".options reltol=1e-9 abstol=1e-14 vntol=1e-11",
        command,
      ]);
      const found = columns.get("i(vo)");
      if (!found) throw new Error(complaints.join("; "));
      return found;
    };
    const ours = (volts: number) => solved([source(12), source(volts, "out"), regulator()]).amps("vout");
    const theirs = await amps(0, ".dc vo -1.5 6 0.0625");
    expect(theirs.length).toBe(121);
    for (const [k, value] of theirs.entries()) exact(ours(k / 16 - 1.5), value, 1e-6, 1e-10);
    // Between 5 V and 2 mV below, where it regulates.
    for (const volts of [4.9979, 4.998, 4.9985, 4.999, 4.9995, 4.9999, 5]) {
      exact(ours(volts), (await amps(volts, ".op"))[0] ?? Number.NaN, 1e-6, 1e-10);
    }
  });
});

describe("a rail pulled above the module's own supply", () => {
  it("feeds the module through its output: a junction and a resistance", () => {
    // Closed form: Shockley's junction of 1e-14 A at 27 °C carries 0.1 A at vt·ln(1e13 + 1).
    const vt = (1.380649e-23 * 300.15) / 1.602176634e-19;
    const drop = vt * Math.log(0.1 / 1e-14 + 1) + 0.1 * 2;
    const module: CircuitElement = { kind: "resistor", id: "module", a: "in", b: "0", ohms: 100 };
    const rail = source(10 + drop, "out");
    const point = solved([rail, regulator({ reverseOhms: 2 }), module]);
    exact(point.volts("in"), 10, 1e-9);
    exact(point.amps("A1"), -0.1, 1e-9);
  });

  it("is cut off without that path, and the way forward does not feel it", () => {
    const module: CircuitElement = { kind: "resistor", id: "module", a: "in", b: "0", ohms: 100 };
    expect(Math.abs(solved([source(12, "out"), regulator(), module]).volts("in"))).toBeLessThan(1e-6);
    const forward = solved([source(12), regulator({ reverseOhms: 2 }), load(100)]);
    exact(forward.volts("out"), solved([source(12), regulator(), load(100)]).volts("out"), 1e-11);
  });
});
