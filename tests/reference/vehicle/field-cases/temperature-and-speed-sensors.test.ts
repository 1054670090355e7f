import { describe, expect, it } from "vitest";
import { buildRig, number, plug, wire } from "../rig";
import { Bench, near } from "./bench";
import { module, modulePlug } from "./parts";

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
