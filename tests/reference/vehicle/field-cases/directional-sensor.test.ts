import { describe, expect, it } from "vitest";
import { buildRig, plug, wire } from "../rig";
import { Bench, near } from "./bench";

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
