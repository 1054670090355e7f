import type { Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, number, plug, wire } from "../rig";
import { Bench, near } from "./bench";
import { module, modulePlug, op } from "./parts";

describe("a mirrored pair of torque signals, one contact bad: heavy one way and no code", () => {
  // honestjohn.co.uk/forum/post/index.htm?t=112932: 2.5 V each at rest, 0.25 to 4.75 V, one resting at 2.2 V. The pull-down
  // of 100 kΩ and the control law are ours; 13 kΩ at the contact follow from 2.2 V.
  const outside = (name: string) => op("or", op("less", name, 0.2), op("greater", name, 4.8));
  const steering = module("A1", ["V", "G", "T1", "T2"], {
    groundLinks: [{ terminal: "G", ohms: 0.05 }],
    rails: [{ name: "sensor", terminal: "V", volts: 5, limitAmps: 0.05 }],
    inputs: ["T1", "T2"].map((terminal) => ({ terminal, pull: { to: "ground" as const, ohms: 100_000 } })),
    signals: [
      { name: "right", value: { volts: "T1" } },
      { name: "left", value: { volts: "T2" } },
      { name: "invalid", value: op("or", outside("right"), outside("left")) },
      { name: "sum", value: op("add", "right", "left") },
      {
        name: "assist",
        value: { if: "invalid", yes: 0, no: op("divide", op("subtract", "right", "left"), 4.5) },
      },
    ],
    monitors: [
      {
        code: "C1511",
        text: "Torque sensor signals do not agree",
        fails: op("greater", op("absolute", op("subtract", "sum", 5)), 0.7),
        matureSeconds: 0.5,
        hold: "keyCycle",
        warningLamp: true,
      },
    ],
  });
  const rig = buildRig({
    conditions: [number("effort", 0, -20, 20)],
    components: [
      steering,
      {
        kind: "torqueSensor",
        id: "B1",
        title: "Torque sensor",
        terminals: { supply: "V", ground: "G", signal1: "T1", signal2: "T2" },
        effort: { condition: "effort" },
        stiffness: 1.25,
        maximumTwist: 7.5,
        spanPerDegree: 0.06,
        trackOhms: 2000,
        outputOhms: 100,
        supplyAmps: 0.02,
      },
    ],
    connectors: [modulePlug("X1", steering), plug("X2", "B1", ["V", "G", "T1", "T2"])],
    conductors: [
      wire("W2", "G1:+", "X1.1"),
      wire("W3", "X1.2", "XE1"),
      ...[1, 2, 3, 4].map((n) => wire(`W1${n}`, `X1.${n + 2}`, `X2.${n}`)),
    ],
  });
  const [right, left] = ["X1.5:h", "X1.6:h"] as const;
  const resistive: Fault[] = [{ kind: "spreadTerminal", at: "X2.3", ohms: 13_000 }];
  const turned = (effort: number) => ({ conditions: { effort } });

  it.each([
    [0, 2.5, 2.5],
    [20, 4.75, 0.25],
    [-20, 0.25, 4.75],
  ])("healthy at %d N·m: %f and %f V, together 5 V", (effort, atRight, atLeft) => {
    const bench = new Bench(rig, [], { effort });
    near(bench.volts(right, "X1.4:h"), atRight, 0.04);
    near(bench.volts(left, "X1.4:h"), atLeft, 0.04);
    near(bench.signal("A1", "sum"), 5, 0.05);
  });
  it("rests at 2.2 V and never reaches 4.75 V behind the contact; the sensor's own pin is whole", () => {
    const bench = new Bench(rig, resistive);
    near(bench.volts(right, "X1.4:h"), 2.2, 0.03);
    near(bench.volts("X2.3:c", "X2.2:c"), 2.5, 0.03);
    expect(bench.do(turned(20)).volts(right, "X1.4:h")).toBeLessThan(4.3);
  });
  it("assists less to that side and stays on without a code", () => {
    const bench = new Bench(rig, resistive);
    const toRight = bench.do(turned(20)).wait(5).signal("A1", "assist");
    const toLeft = bench.do(turned(-20)).wait(5).signal("A1", "assist");
    expect(toRight).toBeGreaterThan(0.7);
    expect(-toLeft - toRight).toBeGreaterThan(0.1);
    expect(bench.signal("A1", "invalid")).toBe(0);
    expect(bench.status("A1", "C1511") & 1).toBe(0);
  });
  it("drops assist at the instant the contact opens and the channel falls to 0 V", () => {
    const bench = new Bench(rig, [{ kind: "open", at: "X2.3" }], { effort: 20 });
    near(bench.volts(right, "X1.4:h"), 0, 0.01);
    expect(bench.signal("A1", "assist")).toBe(0);
    expect(bench.status("A1", "C1511") & 1).toBe(1);
  });
  it("carries some 25 mA through the sensor's supply contact", () => {
    // "Only 30 to 40 mA": two 2 kΩ tracks and 20 mA of electronics here.
    near(new Bench(rig).now.amps("W11"), 0.025, 0.002);
  });
});
