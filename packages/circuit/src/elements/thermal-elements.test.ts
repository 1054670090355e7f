import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CircuitElement,
  fuseOpeningSeconds,
  operatingPoint,
  prepareCircuit,
  prepareTransient,
  type SwitchingPtc,
  transient,
} from "../index";

const supply = (volts: number, ohms = 0.01): CircuitElement => ({
  kind: "voltageSource",
  id: "g",
  positive: "a",
  negative: "0",
  volts,
  ohms,
});
const resistor = (id: string, a: string, b: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});
const prepared = (elements: readonly CircuitElement[]) => {
  const result = prepareCircuit({ ground: "0", elements });
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const unwrap = <T>(result: { ok: true; value: T } | { ok: false; error: { message: string } }): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe("bad input", () => {
  const refused = (element: object) =>
    operatingPoint({ ground: "0", elements: [supply(12), element as CircuitElement] });
  const fuse = { kind: "fuse", id: "x", a: "a", b: "0", type: "C", ratedAmps: 10 };
  const sensor = { kind: "thermistor", id: "x", a: "a", b: "0", celsius: 20 };
  const ptc = { kind: "switchingPtc", id: "x", a: "a", b: "0", wattsPerKelvin: 0.1 };
  const lamp = { kind: "filament", id: "x", a: "a", b: "0", ratedVolts: 12, ratedWatts: 21 };
  it.each<[string, object, string]>([
    ["a fuse of no rating", { ...fuse, ratedAmps: 0 }, "ratedAmps"],
    ["a fuse of an unknown type", { ...fuse, type: "D" }, "type"],
    ["a fuse colder when hot", { ...fuse, coldOhms: 0.01, ratedDropVolts: 0.05 }, "ratedDropVolts"],
    ["a fuse that melts at its rating", { ...fuse, coldOhms: 0.01, ratedDropVolts: 0.3 }, "ratedDropVolts"],
    ["a fuse below absolute zero", { ...fuse, ambientCelsius: -300 }, "ambientCelsius"],
    ["a fuse more than melted", { ...fuse, melted: 1.5 }, "melted"],
    ["a sensor with no law", sensor, "table"],
    [
      "a sensor with two laws",
      {
        ...sensor,
        table: [
          [0, 1],
          [1, 2],
        ],
        platinumOhms: 100,
      },
      "table",
    ],
    ["a table of one point", { ...sensor, table: [[20, 100]] }, "table"],
    [
      "a table with no ohms",
      {
        ...sensor,
        table: [
          [20, 100],
          [30, 0],
        ],
      },
      "table",
    ],
    [
      "a table with one temperature twice",
      {
        ...sensor,
        table: [
          [20, 100],
          [20, 90],
        ],
      },
      "table",
    ],
    ["a law with b below 0", { ...sensor, steinhartHart: { a: 1e-3, b: -1e-4, c: 0 } }, "steinhartHart"],
    ["a sensor at no temperature", { ...sensor, platinumOhms: 100, celsius: Number.NaN }, "celsius"],
    ["a PTC with no curve", ptc, "coldOhms"],
    [
      "a PTC table that does not rise",
      {
        ...ptc,
        table: [
          [20, 1],
          [10, 2],
        ],
      },
      "table",
    ],
    [
      "a PTC that gives nothing up",
      { ...ptc, coldOhms: 1, switchCelsius: 100, wattsPerKelvin: 0 },
      "wattsPerKelvin",
    ],
    ["a filament that warms up at once", { ...lamp, warmUpSeconds: 0 }, "warmUpSeconds"],
    [
      "a resistor at no temperature",
      { kind: "resistor", id: "x", a: "a", b: "0", ohms: 1, celsius: Number.NaN },
      "celsius",
    ],
  ])("refuses %s", (_what, element, field) => {
    expect(refused(element)).toMatchObject({
      ok: false,
      error: { code: "invalid_element", element: "x", field },
    });
  });
});

describe("a thermistor", () => {
  it("follows its temperature by `set`, as prepared anew", () => {
    const table = [
      [-40, 45000],
      [25, 2000],
      [120, 110],
    ] as const;
    const at = (celsius: number): CircuitElement[] => [
      supply(5, 1000),
      { kind: "thermistor", id: "b", a: "a", b: "0", celsius, table },
    ];
    const circuit = prepared(at(20));
    fc.assert(
      fc.property(fc.double({ min: -60, max: 160, noNaN: true }), (celsius) => {
        unwrap(circuit.set("b", { celsius }));
        const anew = unwrap(operatingPoint({ ground: "0", elements: at(celsius) }));
        const point = unwrap(circuit.operatingPoint());
        expect(point.volts("a")).toBeCloseTo(anew.volts("a"), 12);
        expect(point.quantity("b", "ohms") * point.amps("b")).toBeCloseTo(point.volts("a"), 9);
      }),
    );
  });
});

describe("a switching PTC in a network", () => {
  const protector = (more: Partial<SwitchingPtc> = {}): CircuitElement => ({
    kind: "switchingPtc",
    id: "p",
    a: "a",
    b: "b",
    coldOhms: 0.2,
    switchCelsius: 110,
    coefficient: 0.25,
    wattsPerKelvin: 0.035,
    ambientCelsius: 25,
    ...more,
  });

  it("trips when the motor stalls, stays tripped while held, and comes back once it has cooled", () => {
    const circuit = prepared([supply(12), protector(), resistor("m", "b", "0", 4)]);
    const celsius = () => unwrap(circuit.operatingPoint()).quantity("p", "celsius");
    expect(celsius()).toBeLessThan(90);
    unwrap(circuit.set("m", { ohms: 0.5 }));
    expect(celsius()).toBeGreaterThan(115);
    unwrap(circuit.set("m", { ohms: 4 }));
    expect(celsius()).toBeGreaterThan(115);
    unwrap(circuit.set("g", { volts: 0 }));
    expect(celsius()).toBeCloseTo(25, 6);
    unwrap(circuit.set("g", { volts: 12 }));
    expect(celsius()).toBeLessThan(90);
  });

  it("stays at its ambient's temperature where hardly anything lies across it", () => {
    // No current flows anywhere; what is left is rounding, of which nothing may be made.
    const elements: readonly CircuitElement[] = [
      supply(6),
      resistor("r1", "a", "b", 1),
      resistor("r2", "a", "end", 1),
      resistor("r3", "b", "c", 1.000006403745719),
      resistor("r4", "c", "b", 1),
      protector({
        a: "c",
        b: "b",
        coldOhms: 1,
        switchCelsius: 60,
        coefficient: 0.2,
        wattsPerKelvin: 0.1,
        ambientCelsius: 0,
      }),
    ];
    const point = unwrap(operatingPoint({ ground: "0", elements }));
    expect(point.quantity("p", "celsius")).toBeCloseTo(0, 9);
    expect(point.amps("p")).toBeCloseTo(0, 12);
  });

  it("starts from cold where it is told to, and from hot as well", () => {
    const elements = (startCelsius: number) => [
      supply(12),
      protector({ startCelsius }),
      resistor("m", "b", "0", 4),
    ];
    const celsius = (startCelsius: number) =>
      unwrap(operatingPoint({ ground: "0", elements: elements(startCelsius) })).quantity("p", "celsius");
    expect(celsius(25)).toBeLessThan(90);
    expect(celsius(140)).toBeGreaterThan(115);
  });

  it("gives up all the heat it takes, beside diodes and lamps", () => {
    const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        positive(4, 28),
        positive(0.2, 20),
        positive(5, 60),
        positive(-40, 80),
        (volts, ohms, watts, ambientCelsius) => {
          const elements: CircuitElement[] = [
            supply(volts, 0.05),
            { kind: "diode", id: "d", anode: "a", cathode: "c" },
            { ...protector({ ambientCelsius }), a: "c" } as CircuitElement,
            resistor("m", "b", "0", ohms),
            { kind: "filament", id: "e", a: "b", b: "0", ratedVolts: 12, ratedWatts: watts },
          ];
          const point = unwrap(operatingPoint({ ground: "0", elements }));
          const taken = point.amps("p") * (point.volts("c") - point.volts("b"));
          expect(taken).toBeGreaterThanOrEqual(0);
          expect(taken).toBeCloseTo(0.035 * (point.quantity("p", "celsius") - ambientCelsius), 6);
        },
      ),
    );
  });

  it("finds where time would take it, behind a diode or not, whatever the load", () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const record = { quantities: [{ element: "p", name: "celsius" }] };
    const met = { cool: 0, tripped: 0 };
    fc.assert(
      fc.property(
        between(6, 28),
        between(-1, 1),
        between(-1.5, 1),
        between(0.02, 0.3),
        fc.boolean(),
        (volts, cold, load, wattsPerKelvin, hasDiode) => {
          const elements: CircuitElement[] = [
            supply(volts, 0.05),
            { kind: "diode", id: "d", anode: "a", cathode: "c", seriesOhms: 0.02 },
            { kind: "switch", id: "s", a: "a", b: "c", closed: !hasDiode },
            { ...protector({ coldOhms: 10 ** cold, wattsPerKelvin }), a: "c" } as CircuitElement,
            resistor("m", "b", "0", 10 ** load),
          ];
          const network = { ground: "0", elements };
          const settled = unwrap(operatingPoint(network)).quantity("p", "celsius");
          const run = unwrap(transient(network, { untilSeconds: 2000, start: "rest", at: [2000], record }));
          expect(run.quantity("p", "celsius")[0]).toBeCloseTo(settled, 1);
          met[settled > 115 ? "tripped" : "cool"]++;
        },
      ),
      { numRuns: 60 },
    );
    expect(Math.min(met.cool, met.tripped)).toBeGreaterThan(3);
  });

  it("does in a transient what it does at rest, hot start and cold", () => {
    const network = { ground: "0", elements: [supply(12), protector(), resistor("m", "b", "0", 0.5)] };
    const settled = unwrap(operatingPoint(network)).quantity("p", "celsius");
    const record = { quantities: [{ element: "p", name: "celsius" }] };
    const rested = unwrap(transient(network, { untilSeconds: 900, start: "rest", at: [0, 900], record }));
    expect([...rested.quantity("p", "celsius")]).toEqual([expect.closeTo(25, 2), expect.closeTo(settled, 2)]);
    const held = unwrap(transient(network, { untilSeconds: 10, at: [0, 10], record }));
    for (const celsius of held.quantity("p", "celsius")) expect(celsius).toBeCloseTo(settled, 3);
  });
});

describe("a fuse in time", () => {
  const network = (more: object = {}) => ({
    ground: "0",
    elements: [
      supply(12.6, 0.02),
      { kind: "fuse", id: "f", a: "a", b: "b", type: "C", ratedAmps: 10, ...more },
      resistor("load", "b", "0", 2),
    ] as CircuitElement[],
  });

  it("opens once under an overload, and the load goes dead", () => {
    const circuit = unwrap(prepareTransient(network()));
    const drives = [
      { element: "load", field: "ohms", wave: { kind: "steps", times: [1], values: [0.6] } },
    ] as const;
    const result = unwrap(circuit.run({ untilSeconds: 30, drives }));
    expect(result.events).toHaveLength(1);
    expect(result.events[0]).toMatchObject({ element: "f", state: 1 });
    const amps = Math.max(...result.amps("f"));
    expect((result.events[0]?.seconds ?? 0) - 1).toBeCloseTo(fuseOpeningSeconds("C", 10, amps), 1);
    expect(result.volts("b").at(-1)).toBeLessThan(1e-9);
  });

  it("in an operating point melts nothing, whatever it carries", () => {
    const point = unwrap(operatingPoint(network({ ratedAmps: 1 })));
    expect(point.amps("f")).toBeGreaterThan(5);
    expect(point.quantity("f", "isBlown")).toBe(0);
  });

  it("opens in half the time when it is half melted already", () => {
    const seconds = (melted: number): number => {
      const result = unwrap(transient({ ...network({ melted, ratedAmps: 3 }) }, { untilSeconds: 60 }));
      return result.events[0]?.seconds ?? Number.NaN;
    };
    expect(seconds(0.5) / seconds(0)).toBeCloseTo(0.5, 3);
  });

  it("replaced by a whole one carries current again", () => {
    const circuit = prepared(network({ isBlown: true }).elements);
    expect(unwrap(circuit.operatingPoint()).volts("b")).toBeLessThan(1e-9);
    unwrap(circuit.set("f", { isBlown: false }));
    const point = unwrap(circuit.operatingPoint());
    expect(point.volts("b")).toBeGreaterThan(12);
    expect(point.quantity("f", "isBlown")).toBe(0);
    unwrap(circuit.set("f", { isBlown: true }));
    expect(unwrap(circuit.operatingPoint()).volts("b")).toBeLessThan(1e-9);
  });
});
