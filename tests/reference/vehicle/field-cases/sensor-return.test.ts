import type { Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, number, plug, wire } from "../rig";
import { Bench, near } from "./bench";
import { module, modulePlug } from "./parts";

/** Position sensor (4 kΩ track, wiper at 17 to 98 %) and a temperature sensor on one sensor ground of the module. */
const engine = module("A1", ["V", "G", "S", "T"], {
  groundLinks: [{ terminal: "G", ohms: 0.001 }],
  rails: [{ name: "five", terminal: "V", volts: 5, limitAmps: 0.1 }],
  inputs: [
    { terminal: "S", pull: { to: "ground", ohms: 1e6 } },
    { terminal: "T", pull: { to: { rail: "five" }, ohms: 1000 } },
  ],
  signals: [
    { name: "throttle", value: { volts: "S" } },
    { name: "temperature", value: { volts: "T" } },
  ],
});
const rig = buildRig({
  conditions: [number("throttle", 0, 0, 1), number("coolant", 80, -40, 130)],
  components: [
    engine,
    {
      kind: "positionSensor",
      id: "B1",
      title: "Throttle position sensor",
      position: { condition: "throttle" },
      tracks: [
        {
          supply: "V",
          ground: "G",
          signal: "S",
          atRest: 0.17,
          atFull: 0.98,
          trackOhms: 4000,
          outputOhms: 1,
        },
      ],
    },
    {
      kind: "thermistor",
      id: "B2",
      title: "Coolant temperature sensor",
      temperature: { condition: "coolant" },
      table: [
        [-40, 48_140],
        [20, 2450],
        [80, 322],
        [130, 93],
      ],
    },
  ],
  connectors: [modulePlug("X1", engine), plug("X2", "B1", ["V", "G", "S"])],
  conductors: [
    wire("W2", "G1:+", "X1.1"),
    wire("W3", "X1.2", "XE1"),
    wire("W4", "X1.3", "X2.1"),
    wire("W5", "X1.4", "XS1"),
    wire("W6", "XS1", "X2.2"),
    wire("W7", "X1.5", "X2.3"),
    wire("W8", "X1.6", "B2:1"),
    wire("W9", "B2:2", "XS1"),
  ],
  splices: ["XS1"],
});
const [reference, ground, signal] = ["X2.1:h", "X2.2:h", "X2.3:h"] as const;

describe("a throttle sensor's supply reads low between its own pins: resistance in the return", () => {
  // stangnet.com/mustang-forums/threads/tps-sensor-vref-voltage-below-5-volts.869674. 7.56 kΩ beside a 4 kΩ track is our
  // own arithmetic from its 1.73 V and 3.27 V; the sensor has the return for itself.
  const faults: Fault[] = [{ kind: "seriesResistance", at: "W6", ohms: 7560 }];
  const jumper = { kind: "resistor", id: "jumper", a: ground, b: "G1:-", ohms: 0.02 } as const;
  it("leaves 1.73 V between the pins and puts 3.27 V on the ground pin", () => {
    const bench = new Bench(rig, faults);
    near(bench.volts(reference, ground), 1.73, 0.01);
    near(bench.volts(ground), 3.27, 0.01);
    expect(bench.volts(reference)).toBeCloseTo(5, 2);
    near(bench.volts(signal, ground), 0.29, 0.01);
  });
  it("gives 0.85 V closed and almost 5 V wide open with a jumper from the ground pin to the battery", () => {
    const bench = new Bench(rig, faults);
    const closed = bench.with(jumper);
    expect(closed.volts(signal) - closed.volts(ground)).toBeCloseTo(0.85, 2);
    expect(closed.volts(reference) - closed.volts(ground)).toBeCloseTo(5, 2);
    const open = bench.do({ conditions: { throttle: 1 } }).with(jumper);
    expect(open.volts(signal) - open.volts(ground)).toBeGreaterThan(4.85);
  });
  it("gives 1.70 V wide open without it", () => {
    // The report has 1.08 V here, which no single resistance in the return explains together with its other readings.
    const bench = new Bench(rig, faults).do({ conditions: { throttle: 1 } });
    expect(bench.volts(signal, ground)).toBeCloseTo(1.7, 1);
  });
});

describe("all three pins of a throttle sensor read 5 V: the shared return is burnt open in the module", () => {
  // stangnet.com/mustang-forums/threads/tps-voltage-not-what-youre-thinking.836559
  const faults: Fault[] = [{ kind: "internalOpen", component: "A1", terminal: "G" }];
  it("reads 5 V on every pin against the engine, hundredths of a volt between supply and ground pin", () => {
    const bench = new Bench(rig, faults);
    for (const pin of [reference, signal, ground]) {
      expect(bench.volts(pin, "body")).toBeGreaterThan(4.9);
      expect(bench.volts(pin, "body")).toBeLessThan(5.01);
    }
    expect(bench.volts(reference, ground)).toBeLessThan(0.1);
    expect(bench.volts(reference, ground)).toBeGreaterThan(0);
  });
  it("lifts the other sensor on that return too: the module sees an icy engine and a wide-open throttle", () => {
    expect(new Bench(rig).signal("A1", "temperature")).toBeLessThan(1.5);
    const bench = new Bench(rig, faults);
    expect(bench.signal("A1", "temperature")).toBeGreaterThan(4.9);
    expect(bench.signal("A1", "throttle")).toBeGreaterThan(4.9);
  });
  it("has millivolts on the ground wire once it is mended", () => {
    expect(new Bench(rig).volts(ground, "body")).toBeLessThan(0.006);
  });
});
