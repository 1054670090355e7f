import type { Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, plug, wire } from "../rig";
import { Bench, near } from "./bench";
import { choice } from "./parts";

describe("a feed tested with its plug off: battery volts and a bright tester, though resistance is there", () => {
  // searchautoparts.com/motorage, Power and ground testing. A blower takes 15 to 20 A, a tester a quarter of one (our figures).
  const rig = buildRig({
    components: [
      {
        kind: "motor",
        id: "M1",
        title: "Blower",
        windingOhmsAt20: 0.12,
        torquePerAmp: 0.03,
        turning: { frictionTorque: 0.03, loadPerSpeedSquared: 4e-6 },
      },
    ],
    connectors: [plug("X1", "M1", ["1", "2"])],
    conductors: [wire("W2", "G1:+", "X1.1", 2, 4), wire("W3", "X1.2", "XE1", 0.5, 4)],
  });
  const faults: Fault[] = [{ kind: "seriesResistance", at: "W2", ohms: 0.3 }];
  const good = new Bench(rig);
  const bad = new Bench(rig, faults);
  it("reads the battery unplugged, and a 3 W tester there gets 97 % of it", () => {
    const bench = new Bench(rig, faults).unplug("X1");
    near(bench.volts("X1.1:h"), bench.volts("G1:+"), 0.005);
    const lit = bench.with({
      kind: "filament",
      id: "tester",
      a: "X1.1:h",
      b: "body",
      ratedVolts: 12,
      ratedWatts: 3,
    });
    expect(lit.volts("X1.1:h") / lit.volts("G1:+")).toBeGreaterThan(0.97);
  });
  it("drops volts when the blower runs over it, and the blower is slow", () => {
    expect(good.now.amps("M1")).toBeGreaterThan(14);
    near(good.volts("G1:+", "X1.1:h"), 0.2, 0.1);
    expect(bad.volts("G1:+", "X1.1:h")).toBeGreaterThan(3);
    expect(bad.now.amps("M1")).toBeLessThan(0.8 * good.now.amps("M1"));
  });
});

describe("a dim lamp on a corroded ring terminal: 7.5 V on the ground side", () => {
  // easyautodiagnostics.com/ford/4600-5400/voltage-drop-case-study. 2.9 Ω and 2.6 A are our own arithmetic for a 12.8 V /
  // 55 W filament; a lamp of constant resistance would need 4.5 Ω.
  const rig = buildRig({
    components: [
      { kind: "fuse", id: "F1", title: "Dipped beam", ratingAmps: 10, form: "C", coldOhms: 0.0077 },
      { kind: "lamp", id: "E1", title: "Dipped beam", ratedVolts: 12.8, ratedWatts: 55 },
    ],
    conductors: [wire("W2", "G1:+", "F1:1"), wire("W4", "F1:2", "E1:1"), wire("W3", "E1:2", "XE1")],
  });
  const faults: Fault[] = [{ kind: "seriesResistance", at: "W3", ohms: 2.9 }];
  it("has 7.5 V behind the lamp and 2.6 A", () => {
    const bench = new Bench(rig, faults);
    near(bench.volts("E1:2") * (12.5 / 12.7), 7.5, 0.25); // the report's battery has 12.5 V, the rig's 12.7 V
    near(bench.now.amps("E1"), 2.6, 0.1);
    near(bench.volts("G1:+", "E1:1"), 0.05, 0.05);
  });
  it("passes a continuity test with the lamp off", () => {
    const bench = new Bench(rig, faults).do({ pullFuse: "F1" });
    expect(bench.beeps("E1:2", "body")).toBe(true);
    near(bench.ohms("E1:2", "body"), 3.1, 0.1); // leads 0.16 Ω included
  });
});

describe("slow cranking: drops before and after new cables", () => {
  // forums.iboats.com/threads/1977-35hp-johnson.283004: some 100 A, ground 0.32 V with old and 0.10 V with new cables,
  // positive side 0.3 to 0.6 V with either, solenoid 0.02 to 0.04 V.
  const rig = buildRig({
    conditions: [choice("key", "off", "start")],
    components: [
      {
        kind: "switch",
        id: "S1",
        title: "Starter solenoid",
        terminals: ["30", "45"],
        condition: "key",
        positions: { off: [], start: [["30", "45"]] },
        contactOhms: 0.0003,
      },
      { kind: "resistor", id: "M1", title: "Starter, cranking", ohms: 0.119 },
    ],
    conductors: [
      wire("W2", "G1:+", "S1:30", 0.01, 120),
      wire("W3", "S1:45", "M1:1", 0.01, 120),
      wire("W4", "M1:2", "XE1", 0.01, 120),
    ],
  });
  const drops = (positive: number, ground: number, key = "start") => {
    const faults: Fault[] = [
      { kind: "seriesResistance", at: "W2", ohms: positive },
      { kind: "seriesResistance", at: "W4", ohms: ground },
    ];
    const bench = new Bench(rig, faults, { key });
    return {
      amps: bench.now.amps("M1"),
      ground: bench.volts("M1:2"),
      positive: bench.volts("G1:+", "S1:30"),
      solenoid: bench.volts("S1:30", "S1:45"),
      solenoidInput: bench.volts("S1:30", "M1:2"),
    };
  };
  it("old cables: 3.2 mΩ in the ground are 0.32 V, 4 mΩ in the feed 0.4 V", () => {
    const old = drops(0.004, 0.0032);
    near(old.amps, 100, 2);
    near(old.ground, 0.32, 0.01);
    near(old.positive, 0.4, 0.02);
    near(old.solenoid, 0.03, 0.01);
  });
  it("new cables: 1 mΩ in the ground are 0.10 V, and the feed still drops 0.4 V", () => {
    const fresh = drops(0.004, 0.001);
    near(fresh.ground, 0.1, 0.005);
    near(fresh.positive, 0.4, 0.02);
  });
  it("8 mΩ in the feed are 0.8 V", () => near(drops(0.008, 0.001).positive, 0.8, 0.03));
  it("shows full battery volts at rest whatever the cables", () => {
    near(drops(0.008, 0.0032, "off").solenoidInput, 12.7, 0.01);
  });
});
