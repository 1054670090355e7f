import { type CircuitElement, operatingPoint, prepareCircuit } from "@probeworthy/circuit";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { type NgspiceEngine, startEngine } from "./ngspice-engine";

// Output stages of control modules. "Closed form" is computed here by another route than the package's.

const unwrap = <T>(result: { ok: true; value: T } | { ok: false; error: { message: string } }): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const solved = (elements: readonly CircuitElement[]) => unwrap(operatingPoint({ ground: "31", elements }));
const source = (volts: number, positive = "30"): CircuitElement => ({
  kind: "voltageSource",
  id: `v${positive}`,
  positive,
  negative: "31",
  volts,
});
const resistor = (id: string, a: string, b: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});
const push = (amps: number): CircuitElement => ({
  kind: "currentSource",
  id: "push",
  from: "31",
  to: "o",
  amps,
});
const driver = (type: string, law: object = {}): CircuitElement =>
  ({
    kind: "driver",
    id: "A1",
    type,
    output: "o",
    ...(type === "lowSide" ? {} : { supply: "30" }),
    ...(type === "highSide" ? {} : { ground: "31" }),
    on: true,
    onOhms: 0.02,
    ...law,
  }) as CircuitElement;
const meter = resistor("meter", "o", "31", 1e7);

const exact = (value: number, expected: number, relative = 1e-12, absolute = 0) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected) + absolute);

describe("an output that is on", () => {
  // Closed form: a divider. The body diode takes some picoamps.
  it.each([
    ["highSide", {}, "o", "31", (12 * 2.4) / 2.42],
    ["lowSide", {}, "30", "o", (12 * 0.02) / 2.42],
    ["pushPull", { leakAmps: 0 }, "o", "31", (12 * 2.4) / 2.42],
    ["pushPull", { leakAmps: 0, on: false }, "30", "o", (12 * 0.02) / 2.42],
  ] as const)("drops its on-resistance's share: %s %j", (type, law, a, b, volts) => {
    const point = solved([source(12), driver(type, law), resistor("load", a, b, 2.4)]);
    exact(point.volts("o"), volts, 1e-10);
    const sign = b === "31" ? -1 : 1;
    exact(point.amps("A1"), sign * point.amps("load"), 1e-9);
  });

  it("is hotter, so resists more: the absolute temperature to the power of 1.5", () => {
    const point = solved([
      source(12),
      driver("highSide", { celsius: 150 }),
      resistor("load", "o", "31", 2.4),
    ]);
    const hot = 0.02 * (423.15 / 298.15) ** 1.5;
    exact(point.volts("o"), (12 * 2.4) / (2.4 + hot), 1e-9);
  });

  it.each([1e-3, 0.05, 0.1])("supplies its limit into %d Ω", (ohms) => {
    const law = { limitAmps: 30 };
    exact(
      -solved([source(12), driver("highSide", law), resistor("load", "o", "31", ohms)]).amps("A1"),
      30,
      1e-6,
    );
    exact(
      solved([source(12), driver("lowSide", law), resistor("load", "30", "o", ohms)]).amps("A1"),
      30,
      1e-6,
    );
  });

  it("lets current back through its channel", () => {
    exact(solved([source(12), driver("highSide"), push(3)]).volts("o"), 12 + 0.06, 1e-9);
  });
});

describe("an output that is off", () => {
  const off = (law: object = {}) => ({ on: false, leakAmps: 5e-7, ...law });

  it("shows a ghost voltage on a meter of 10 MΩ and none on a lamp", () => {
    // Closed form: 0.5 µA · 10 MΩ = 5 V; the leaks of 1e-12 S of body diode and switch add 70 µV each.
    exact(solved([source(12), driver("highSide", off()), meter]).volts("o"), 5, 4e-5);
    const lamp: CircuitElement = {
      kind: "filament",
      id: "E1",
      a: "o",
      b: "31",
      ratedVolts: 12,
      ratedWatts: 5,
    };
    expect(solved([source(12), driver("highSide", off()), meter, lamp]).volts("o")).toBeLessThan(2e-6);
    const ghost = solved([source(12), driver("highSide", off({ leakAmps: 1e-5 })), meter]).volts("o");
    // 10 µA could make 100 V: the leak itself limits, 1e-5·tanh(12 − v) = v/1e7 (closed form, by inversion).
    exact(12 - ghost, Math.atanh(ghost / 1e7 / 1e-5), 1e-5);
  });

  it("tells an open load by its pull-up", () => {
    // Closed form: 100 µA through the load, or the whole supply less what the meter draws through the pull.
    const law = { on: false, supply: "30", pullUpAmps: 1e-4, leakAmps: 0 };
    const loaded = solved([source(12), driver("lowSide", law), resistor("load", "o", "31", 1e4)]);
    exact(loaded.volts("o"), 1, 1e-6);
    const open = solved([source(12), driver("lowSide", law), meter]).volts("o");
    exact(12 - open, Math.atanh(open / 1e7 / 1e-4), 1e-4);
    const driving = solved([source(12), driver("lowSide", { ...law, on: true }), meter]).volts("o");
    expect(Math.abs(driving)).toBeLessThan(1e-7);
  });

  it("pulls down, and drives neither way when it is not enabled", () => {
    const law = { enabled: false, pullDownAmps: 2e-4, leakAmps: 0 };
    const point = solved([source(12), driver("pushPull", law), resistor("r", "30", "o", 1e4)]);
    exact(point.volts("o"), 10, 1e-6);
    exact(point.amps("A1"), 2e-4, 1e-6);
  });

  it.each([
    ["highSide", -1e-3, 12 - 40],
    ["lowSide", 1e-3, 40],
  ])("%s holds a coil at its clamp", (type, amps, volts) => {
    // The clamp is rated at the milliamp that the coil drives here.
    const law = { on: false, clampVolts: 40, leakAmps: 0 };
    exact(solved([source(12), driver(type, law), push(amps)]).volts("o"), volts, 1e-9);
  });

  it.each([
    ["highSide", 1, 12.8],
    ["lowSide", -1, -0.8],
    ["pushPull", 1, 12.8],
    ["pushPull", -1, -0.8],
  ])("%s passes %d A on through its body diode", (type, amps, volts) => {
    const law = { on: false, enabled: false, leakAmps: 0 };
    exact(solved([source(12), driver(type, law), push(amps)]).volts("o"), volts, 1e-9);
  });

  it("conducts through both body diodes when the battery is the wrong way round", () => {
    const law = { enabled: false, leakAmps: 0 };
    const point = solved([
      source(-12),
      resistor("r", "30", "s", 10.4),
      driver("pushPull", { ...law, supply: "s" }),
    ]);
    // Closed form: 12 V less twice 0.8 V, at 1 A in 10.4 Ω.
    exact(point.amps("r"), -1, 1e-9);
  });
});

describe("a bus transmitter", () => {
  const law = { onOhms: 30, blockingVolts: 0.7, blockingAmps: 0.01, leakAmps: 0 };

  it("drops its blocking diode on top", () => {
    // Closed form: 10 mA · 30 Ω + 0.7 V.
    exact(solved([source(12), driver("lowSide", law), push(0.01)]).volts("o"), 1, 1e-9);
  });

  it("takes nothing from a line above its supply", () => {
    const point = solved([source(5), source(12, "o"), driver("highSide", law)]);
    expect(Math.abs(point.amps("A1"))).toBeLessThan(1e-10);
    const without = solved([source(5), source(12, "o"), driver("highSide", { onOhms: 30 })]);
    expect(without.amps("A1")).toBeGreaterThan(0.2);
  });
});

describe("a stage that trips", () => {
  const law = { limitAmps: 10, tripSeconds: 5e-3, leakAmps: 0 };
  const prepared = (more: object = {}) =>
    unwrap(
      prepareCircuit({
        ground: "31",
        elements: [source(12), driver("highSide", { ...law, ...more }), resistor("load", "o", "31", 2)],
      }),
    );

  it("is off into a short and stays off after it, until the command is withdrawn", () => {
    const circuit = prepared();
    exact(unwrap(circuit.operatingPoint()).amps("load"), 12 / 2.02, 1e-3);
    unwrap(circuit.set("load", { ohms: 0.01 }));
    const tripped = unwrap(circuit.operatingPoint());
    expect(Math.abs(tripped.amps("load"))).toBeLessThan(1e-9);
    expect(tripped.quantity("A1", "isTripped")).toBe(1);
    unwrap(circuit.set("load", { ohms: 2 }));
    expect(unwrap(circuit.operatingPoint()).volts("o")).toBeLessThan(1e-6);
    unwrap(circuit.set("A1", { on: false }));
    expect(unwrap(circuit.operatingPoint()).quantity("A1", "isTripped")).toBe(0);
    unwrap(circuit.set("A1", { on: true }));
    exact(unwrap(circuit.operatingPoint()).amps("load"), 12 / 2.02, 1e-3);
  });

  it("limits on when it tries again", () => {
    const circuit = prepared({ retrySeconds: 0.1 });
    unwrap(circuit.set("load", { ohms: 0.01 }));
    exact(unwrap(circuit.operatingPoint()).amps("load"), 10, 1e-6);
  });
});

describe("any stage between any voltages", () => {
  const law = fc.record({
    on: fc.boolean(),
    enabled: fc.boolean(),
    onOhms: fc.constantFrom(1e-3, 0.05, 10, 300),
    limitAmps: fc.constantFrom(0.05, 2, 60),
    leakAmps: fc.constantFrom(0, 1e-6, 1e-4),
    supply: fc.constant("30"),
    ground: fc.constant("x"),
    pullUpAmps: fc.constantFrom(0, 1e-4),
    pullDownAmps: fc.constantFrom(0, 1e-3),
    celsius: fc.constantFrom(-40, 25, 125),
  });
  const more = fc.constantFrom(
    {},
    { clampVolts: 33 },
    { blockingVolts: 0.7 },
    { clampVolts: 18, blockingVolts: 0.5 },
  );
  const type = fc.constantFrom("highSide", "lowSide", "pushPull");
  const volts = fc.double({ min: -30, max: 30, noNaN: true });
  const lead = fc.constantFrom(0.01, 1, 1e3);

  it("finds an answer and never delivers power", () => {
    fc.assert(
      fc.property(type, law, more, volts, volts, volts, lead, (kind, plain, extra, p, q, r, ohms) => {
        const stage = driver(kind, { ...plain, ...extra, output: "o" });
        const elements = [
          source(p),
          source(q, "y"),
          source(r, "x"),
          resistor("lead", "y", "o", ohms),
          resistor("m", "30", "31", 1e6),
          stage,
        ];
        const point = solved(elements);
        // What the sources deliver and the resistors do not turn to heat.
        const heat = (q - point.volts("o")) ** 2 / ohms + p ** 2 / 1e6;
        const delivered = -(p * point.amps("v30") + q * point.amps("vy") + r * point.amps("vx"));
        expect(delivered - heat).toBeGreaterThanOrEqual(-1e-9 * (1 + heat + Math.abs(delivered)));
      }),
      { numRuns: 1500 },
    );
  });
});

describe("the law of the channel in ngspice 45", () => {
  let ngspice: NgspiceEngine;
  beforeAll(async () => {
    ngspice = await startEngine();
  });

  it("gives the same current from a light load into a short", async () => {
    // 0.05 Ω, 8 A: the published law, u = v/(ohms·limit), amps = limit·u/(1 + u⁸)^(1/8), and the body diode's leak.
    const u = "(v(s,o)/0.4)";
    const loads = [1e4, 100, 12, 6, 3, 2, 1.6, 1.55, 1.5, 1.45, 1.4, 1.2, 1, 0.5, 0.1, 0.01];
    for (const ohms of loads) {
      const { columns, complaints } = await ngspice.run([
        "vs s 0 12",
        `rl o 0 ${ohms}`,
        `b1 s o i=8*${u}/(1+${u}^8)^0.125+1e-12*v(s,o)`,
        ".options reltol=1e-10 abstol=1e-15 vntol=1e-12",
        ".op",
      ]);
      const theirs = columns.get("v(o)")?.[0];
      if (theirs === undefined) throw new Error(complaints.join("; "));
      const law = { onOhms: 0.05, limitAmps: 8 };
      exact(
        solved([source(12), driver("highSide", law), resistor("l", "o", "31", ohms)]).volts("o"),
        theirs,
        1e-6,
      );
    }
  });
});

describe("refusals", () => {
  it.each([
    [driver("sideways"), "type"],
    [driver("highSide", { supply: undefined }), "supply"],
    [driver("lowSide", { ground: undefined }), "ground"],
    [driver("lowSide", { pullUpAmps: 1e-4 }), "supply"],
    [driver("highSide", { pullDownAmps: 1e-4 }), "ground"],
    [driver("highSide", { tripSeconds: 1e-3 }), "limitAmps"],
    [driver("highSide", { bodyVolts: 9 }), "bodyVolts"],
    [driver("highSide", { blockingVolts: 0.1, celsius: 150 }), "blockingVolts"],
    [driver("highSide", { on: 1 }), "on"],
  ])("name the field to blame in %j", (element, field) => {
    const result = operatingPoint({ ground: "31", elements: [source(12), element] });
    expect(result).toMatchObject({ ok: false, error: { code: "invalid_element", element: "A1", field } });
  });
});
