import { describe, expect, it } from "vitest";
import { type CircuitElement, operatingPoint, prepareCircuit } from "./index";

const battery: CircuitElement = {
  kind: "voltageSource",
  id: "G1",
  positive: "30",
  negative: "31",
  volts: 12,
};
const load: CircuitElement = { kind: "resistor", id: "R1", a: "30", b: "31", ohms: 100 };

const errorOf = (elements: readonly unknown[], ground = "31") => {
  const result = operatingPoint({ ground, elements: elements as CircuitElement[] });
  if (result.ok) throw new Error("An error was expected.");
  return result.error;
};

const unwrap = <T>(result: { ok: true; value: T } | { ok: false; error: { message: string } }): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe("refusals", () => {
  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY, undefined, "100"])("refuses %s ohms", (ohms) => {
    const error = errorOf([battery, { ...load, ohms }]);
    expect(error).toMatchObject({ code: "invalid_element", element: "R1", field: "ohms" });
  });

  it.each([
    [{ ...battery, volts: Number.NaN }, "volts"],
    [{ ...battery, ohms: 0 }, "ohms"],
    [{ kind: "currentSource", id: "I", from: "30", to: "31", amps: Number.POSITIVE_INFINITY }, "amps"],
    [{ kind: "diode", id: "D", anode: "30", cathode: "31", saturationAmps: 0 }, "saturationAmps"],
    [{ kind: "diode", id: "D", anode: "30", cathode: "31", celsius: -300 }, "celsius"],
    [{ kind: "switch", id: "S", a: "30", b: "31", closed: true, closedOhms: -1 }, "closedOhms"],
    [{ kind: "switch", id: "S", a: "30", b: "31" }, "closed"],
    [{ kind: "filament", id: "E", a: "30", b: "31", ratedVolts: 12, ratedWatts: 0 }, "ratedWatts"],
    [
      { kind: "filament", id: "E", a: "30", b: "31", ratedVolts: 12, ratedWatts: 5, coldRatio: 1 },
      "coldRatio",
    ],
    [
      { kind: "regulator", id: "A", input: "30", output: "o", reference: "31", volts: 5, limitAmps: 0 },
      "limitAmps",
    ],
  ])("names element and field of %j", (element, field) => {
    expect(errorOf([load, element])).toMatchObject({ code: "invalid_element", element: element.id, field });
  });

  it("refuses a node without a name and a kind it does not know", () => {
    expect(errorOf([{ ...load, a: "" }])).toMatchObject({ code: "invalid_element", element: "R1" });
    expect(errorOf([{ ...load, kind: "magnet" }])).toMatchObject({ code: "invalid_element", element: "R1" });
  });

  it("refuses two elements of one name", () => {
    expect(errorOf([battery, load, load])).toMatchObject({ code: "duplicate_id", element: "R1" });
  });

  it("refuses a ground that nothing touches, and an empty network", () => {
    expect(errorOf([battery, load], "0")).toMatchObject({ code: "missing_ground", node: "0" });
    expect(errorOf([])).toMatchObject({ code: "missing_ground", node: "31" });
  });

  it("refuses a loop of ideal sources even when the volts agree", () => {
    expect(errorOf([battery, { ...battery, id: "G2" }, load])).toMatchObject({
      code: "voltage_loop",
      element: "G2",
    });
    const half = { kind: "voltageSource", volts: 6 };
    const halves = [
      { ...half, id: "G2", positive: "30", negative: "m" },
      { ...half, id: "G3", positive: "m", negative: "31" },
    ];
    expect(errorOf([battery, ...halves])).toMatchObject({ code: "voltage_loop", element: "G3" });
    expect(errorOf([{ ...battery, negative: "30" }, load])).toMatchObject({
      code: "voltage_loop",
      element: "G1",
    });
  });

  it("refuses a controlled source without its control", () => {
    const source = { kind: "controlledSource", id: "E1", positive: "o", negative: "31", gain: 2 };
    expect(errorOf([battery, load, { ...source, type: "vcvs" }])).toMatchObject({ code: "missing_control" });
    for (const controlElement of [undefined, "nothing", "D1"]) {
      const diode = { kind: "diode", id: "D1", anode: "30", cathode: "31" };
      const elements = [battery, load, diode, { ...source, type: "cccs", controlElement }];
      expect(errorOf(elements)).toMatchObject({ code: "missing_control", element: "E1" });
    }
  });

  it("refuses a current source into nothing and names the dead end", () => {
    const source: CircuitElement = { kind: "currentSource", id: "I1", from: "31", to: "open", amps: 1e-3 };
    expect(errorOf([battery, load, source])).toMatchObject({
      code: "open_current_source",
      element: "I1",
      node: "open",
    });
    const behindSwitch: CircuitElement = { kind: "switch", id: "S1", a: "open", b: "31", closed: false };
    expect(errorOf([battery, load, source, behindSwitch])).toMatchObject({ code: "open_current_source" });
    expect(operatingPoint({ ground: "31", elements: [battery, load, { ...source, amps: 0 }] }).ok).toBe(true);
  });

  it("reports a network without a single answer by its node", () => {
    // A negative conductance that cancels the load exactly leaves node x undetermined.
    const cancel: CircuitElement[] = [
      { kind: "resistor", id: "R2", a: "x", b: "31", ohms: 2 },
      {
        kind: "controlledSource",
        id: "E1",
        type: "vccs",
        positive: "31",
        negative: "x",
        controlPositive: "x",
        controlNegative: "31",
        gain: 0.5,
      },
    ];
    expect(errorOf([battery, load, ...cancel])).toMatchObject({ code: "singular", node: "x" });
  });

  it("gives up within the limits it is given", () => {
    const elements: CircuitElement[] = [battery, { kind: "resistor", id: "R2", a: "30", b: "x", ohms: 100 }];
    elements.push({ kind: "diode", id: "D1", anode: "x", cathode: "31" });
    const result = operatingPoint(
      { ground: "31", elements },
      { maxIterations: 2, shuntSteps: 0, sourceSteps: 0 },
    );
    expect(result).toMatchObject({ ok: false, error: { code: "no_convergence" } });
  });

  it("does not call currents beyond all numbers an answer", () => {
    const elements: CircuitElement[] = [
      { kind: "voltageSource", id: "G2", positive: "p", negative: "31", volts: 1e200, ohms: 1e-150 },
      { kind: "resistor", id: "R2", a: "p", b: "31", ohms: 1e-150 },
    ];
    const result = operatingPoint({ ground: "31", elements });
    expect(result).toMatchObject({ ok: false, error: { code: "no_convergence", node: "p" } });
  });
});

describe("floating islands", () => {
  it("gives an island a defined answer and names its nodes", () => {
    const island: CircuitElement[] = [
      { kind: "voltageSource", id: "G2", positive: "p", negative: "n", volts: 9 },
      { kind: "resistor", id: "R2", a: "p", b: "n", ohms: 1e-3 },
    ];
    const point = unwrap(operatingPoint({ ground: "31", elements: [battery, load, ...island] }));
    expect(point.floatingNodes).toEqual(["p", "n"]);
    expect(point.volts("p") - point.volts("n")).toBeCloseTo(9, 12);
    expect(point.volts("p")).toBeCloseTo(4.5, 9);
    expect(point.amps("R2")).toBeCloseTo(9000, 6);
  });

  it("counts a node behind an open switch as floating until the switch closes", () => {
    const elements: CircuitElement[] = [
      battery,
      { kind: "switch", id: "S1", a: "30", b: "x", closed: false },
      { kind: "resistor", id: "meter", a: "y", b: "31", ohms: 1e7 },
      { kind: "switch", id: "lead", a: "x", b: "y", closed: false },
    ];
    const circuit = unwrap(prepareCircuit({ ground: "31", elements }));
    const before = unwrap(circuit.operatingPoint());
    expect(before.floatingNodes).toEqual(["x"]);
    unwrap(circuit.set("lead", { closed: true }));
    const probed = unwrap(circuit.operatingPoint());
    expect(probed.floatingNodes).toEqual([]);
    // 12 V · 10 MΩ / 1e12 Ω: an open circuit reads nothing on a meter.
    expect(probed.volts("y")).toBeCloseTo(1.2e-4, 8);
    unwrap(circuit.set("S1", { closed: true }));
    expect(unwrap(circuit.operatingPoint()).volts("y")).toBeCloseTo(12, 6);
    expect(before.volts("y")).toBeCloseTo(0, 3);
  });
});

describe("changes", () => {
  const prepared = () => unwrap(prepareCircuit({ ground: "31", elements: [battery, load] }));

  it("solves the changed network", () => {
    const circuit = prepared();
    expect(unwrap(circuit.operatingPoint()).amps("R1")).toBeCloseTo(0.12, 12);
    unwrap(circuit.set("R1", { ohms: 50 }));
    unwrap(circuit.set("G1", { volts: 14 }));
    const point = unwrap(circuit.operatingPoint());
    expect(point.amps("R1")).toBeCloseTo(0.28, 12);
    expect(point.amps("G1")).toBeCloseTo(-0.28, 12);
  });

  it("refuses what is out of range, unknown or topological, and changes nothing", () => {
    const circuit = prepared();
    expect(circuit.set("R1", { ohms: -5 })).toMatchObject({
      ok: false,
      error: { code: "invalid_element", field: "ohms" },
    });
    expect(circuit.set("R1", { volts: 5 })).toMatchObject({
      ok: false,
      error: { element: "R1", field: "volts" },
    });
    expect(circuit.set("G1", { ohms: 1 })).toMatchObject({
      ok: false,
      error: { element: "G1", field: "ohms" },
    });
    expect(circuit.set("R9", { ohms: 1 })).toMatchObject({ ok: false, error: { code: "unknown_element" } });
    expect(unwrap(circuit.operatingPoint()).amps("R1")).toBeCloseTo(0.12, 12);
  });

  it("throws for names that are our own mistake", () => {
    const point = unwrap(prepared().operatingPoint());
    expect(() => point.volts("nowhere")).toThrow("nowhere");
    expect(() => point.amps("nothing")).toThrow("nothing");
  });

  it("lists its nodes with the ground among them", () => {
    expect(prepared().nodes).toEqual(["30", "31"]);
  });
});

it("finds a shorted battery's amps where megohms are all that ties it to the ground", () => {
  const resistor = (id: string, a: string, b: string, ohms: number): CircuitElement => ({
    kind: "resistor",
    id,
    a,
    b,
    ohms,
  });
  const wires = { ab: 1.0000001561159344e-3, bc: 1.483988870018993e-3, ad: 18.57153638091839e-3 };
  const elements: readonly CircuitElement[] = [
    resistor("W1", "b", "a", wires.ab),
    resistor("W2", "b", "c", wires.bc),
    resistor("W3", "a", "d", wires.ad),
    resistor("W4", "d", "a", 25118857.032395326),
    {
      kind: "battery",
      id: "G2",
      positive: "c",
      negative: "d",
      capacityAmpereHours: 99.9999989271164,
      stateOfCharge: 0.16487591162551005,
      celsius: 31.385870944422614,
    },
    resistor("R1", "out", "31", 144.25781062812533),
    {
      kind: "comparator",
      id: "A1",
      a: "30",
      b: "out",
      positive: "d",
      negative: "30",
      thresholdVolts: 10.188209684187644,
      hysteresisVolts: 0.9141398310261499,
      closesBelow: true,
      initiallyClosed: false,
      inputOhms: 60335515.748061165,
      closedOhms: 0.24620256627878767,
    },
  ];
  for (const scale of [1, 1.01, 1.02, 1.05, 0.9]) {
    const scaled = elements.map((element) =>
      element.id === "W3" ? resistor("W3", "a", "d", scale * wires.ad) : element,
    );
    const point = unwrap(operatingPoint({ ground: "31", elements: scaled }));
    // Ohm's law: the battery's terminal volts over the wires.
    const amps = (point.volts("c") - point.volts("d")) / (wires.ab + wires.bc + scale * wires.ad);
    expect(Math.abs(amps)).toBeGreaterThan(400);
    expect(point.amps("W2")).toBeCloseTo(-amps, 6);
    // 400 A end in their last digits, of which some 1e9 Ω make 0.1 mV.
    expect(Math.abs(point.volts("out"))).toBeLessThan(1e-3);
  }
});
