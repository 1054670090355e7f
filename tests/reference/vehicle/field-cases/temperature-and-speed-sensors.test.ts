import { describe, expect, it } from "vitest";
import { buildRig, number, plug, wire } from "../rig";
import { Bench, module, modulePlug, near } from "./bench";

describe("a temperature sensor on a pull-up of 1.1 kΩ", () => {
  // Service data: QX56 in the lemon-manuals collection, °C, kΩ and V; its ohms are ranges, their middles are taken here.
  // The pull-up is worked out from 2.5 kΩ at 3.5 V (1.07 kΩ) and 0.248 kΩ at 0.9 V (1.13 kΩ).
  const engine = module("A1", ["V", "T"], {
    rails: [{ name: "five", terminal: "V", volts: 5, limitAmps: 0.1 }],
    inputs: [{ terminal: "T", pull: { to: { rail: "five" }, ohms: 1100 } }],
  });
  const rig = buildRig({
    conditions: [number("coolant", 20, -40, 130)],
    components: [
      engine,
      {
        kind: "thermistor",
        id: "B1",
        title: "Coolant temperature sensor",
        temperature: { condition: "coolant" },
        table: [
          [-10, 9200],
          [20, 2500],
          [50, 840],
          [90, 248],
        ],
      },
    ],
    connectors: [modulePlug("X1", engine), plug("X2", "B1", ["1", "2"])],
    conductors: [
      wire("W2", "G1:+", "X1.1"),
      wire("W3", "X1.2", "XE1"),
      wire("W4", "X1.4", "X2.1"),
      wire("W5", "X2.2", "XE1"),
    ],
  });
  it.each([
    [-10, 4.4, 0.1],
    [20, 3.5, 0.07],
    [50, 2.2, 0.07],
    [90, 0.9, 0.05],
  ])("at %d °C reads %f V", (coolant, volts, tolerance) => {
    near(new Bench(rig, [], { coolant }).volts("X2.1:h"), volts, tolerance);
  });
  it("makes the pull-up 1.07 to 1.13 kΩ at all of them", () => {
    for (const coolant of [-10, 20, 50, 90]) {
      const bench = new Bench(rig, [], { coolant });
      const { volts } = bench.now;
      const ohms = bench.unplug("X2").ohms("X2.1:c", "X2.2:c") ?? Number.NaN;
      const pullUp = ohms * (5 / volts("X2.1:h") - 1);
      near(pullUp, 1100, 30);
    }
  });
  it("shows the supply with the plug off", () => near(new Bench(rig).unplug("X2").volts("X2.1:h"), 5, 0.01));
});

describe("an active wheel speed sensor of 7 and 14 mA into 100 Ω", () => {
  // Service data of several makers agree on 5.9 to 8.4 and 11.8 to 16.8 mA: 0.59–0.84 V and 1.18–1.68 V over 100 Ω.
  const brakes = module("A1", ["W", "S"], {
    internalLinks: [{ from: "30", to: "W", ohms: 1 }],
    inputs: [{ terminal: "S", pull: { to: "ground", ohms: 100 }, pulseSwingVolts: 0.4 }],
    signals: [{ name: "toothRate", value: { hertz: "S" } }],
  });
  const rig = buildRig({
    conditions: [number("hertz", 0, 0, 5000)],
    components: [
      brakes,
      {
        kind: "activeSpeedSensor",
        id: "B1",
        title: "Wheel speed sensor",
        lowAmps: 0.007,
        highAmps: 0.014,
        minimumVolts: 4,
        hertz: { condition: "hertz" },
      },
    ],
    connectors: [modulePlug("X1", brakes), plug("X2", "B1", ["1", "2"])],
    conductors: [
      wire("W2", "G1:+", "X1.1"),
      wire("W3", "X1.2", "XE1"),
      wire("W4", "X1.3", "X2.1"),
      wire("W5", "X1.4", "X2.2"),
    ],
  });
  it("stands at 0.70 V, and changes between 0.70 and 1.40 V while the wheel turns", () => {
    const bench = new Bench(rig);
    near(bench.volts("X2.2:h"), 0.7, 0.01);
    bench.do({ conditions: { hertz: 400 } });
    const mean = bench.volts("X2.2:h");
    const { volts, hertz } = bench.now.alternating("X2.2:h", "G1:-");
    near(mean - volts, 0.7, 0.01);
    near(mean + volts, 1.4, 0.01);
    expect(hertz).toBe(400);
    expect(bench.signal("A1", "toothRate")).toBe(400);
  });
});

describe("480 to 500 Ω one way, open the other: a two-wire sensor with a semiconductor in it", () => {
  // rangerovers.net/threads/left-rear-speed-sensor-out….335064, on a 2 kΩ range. The vehicle's own kind of active sensor is
  // a current sink and has no such direction, so this one is put together from a curve: half a volt at a milliampere
  // forward, nothing backward. The meter of that report drives about 1 mA (common practice, no source).
  const rig = buildRig({
    components: [
      {
        kind: "composed",
        id: "B1",
        title: "Wheel speed sensor",
        terminals: ["A", "B"],
        parts: [
          {
            kind: "curve",
            name: "junction",
            between: ["A", "B"],
            points: [
              [-20, -1e-6],
              [0, 0],
              [0.35, 1e-5],
              [0.49, 1e-3],
              [0.75, 0.05],
            ],
          },
        ],
      },
      { kind: "passive", id: "A1", title: "Module, unplugged", terminals: ["A", "B"] },
    ],
    connectors: [plug("X1", "A1", ["A", "B"]), plug("X2", "B1", ["A", "B"])],
    conductors: [wire("W2", "X1.1", "X2.1", 4, 0.5), wire("W3", "X1.2", "X2.2", 4, 0.5)],
  });
  const [a, b] = ["X1.1:h", "X1.2:h"] as const;
  /** 3.3 V behind 2.8 kΩ: 1 mA into half a volt. */
  const sourceAmps = 3.3 / 2800;
  const oldMeter = (red: string, black: string): number => {
    const now = new Bench(rig)
      .unplug("X1")
      .with(
        { kind: "currentSource", id: "test", from: black, to: red, amps: sourceAmps },
        { kind: "resistor", id: "compliance", a: red, b: black, ohms: 2800 },
      );
    const volts = now.volts(red) - now.volts(black);
    return volts / (sourceAmps - volts / 2800);
  };
  it("shows 480 to 500 Ω forward and far more than the 2 kΩ of that range backward", () => {
    near(oldMeter(a, b), 490, 10);
    expect(oldMeter(b, a)).toBeGreaterThan(1e5);
  });
  it("is not seen by a meter that tests with 0.4 V", () => {
    const bench = new Bench(rig).unplug("X1");
    expect(bench.ohms(a, b, "6 kΩ")).toBeNull();
    expect(bench.ohms(b, a, "6 kΩ")).toBeNull();
  });
  it("leaves the two wires proven when the sensor's plug is bridged and the loop measured from the other end", () => {
    const bridge = [{ kind: "shortBetween", at: "X2.1:h", other: "X2.2:h", ohms: 0.02 }] as const;
    const ohms = (faults: ConstructorParameters<typeof Bench>[1]) =>
      new Bench(rig, faults).unplug("X1", "X2").ohms(a, b, "600 Ω");
    near(ohms(bridge), 0.46, 0.1); // 8 m of 0.5 mm² and the leads
    expect(ohms([...bridge, { kind: "open", at: "W3" }])).toBeNull();
  });
});
