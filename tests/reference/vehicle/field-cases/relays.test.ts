import type { Component, Conductor, Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, wire } from "../rig";
import { Bench, near } from "./bench";
import { choice } from "./parts";

const ignition: Component = {
  kind: "switch",
  id: "S1",
  title: "Ignition",
  terminals: ["30", "15"],
  condition: "key",
  positions: { off: [], on: [["30", "15"]] },
  contactOhms: 0.004,
};
const relay = (suppressor: "none" | "resistor" | "diode"): Component => ({
  kind: "relay",
  id: "K1",
  title: "Relay",
  contact: "make",
  coilOhms: 85,
  pullInVolts: 8,
  dropOutVolts: 3,
  contactOhms: 0.01,
  suppressor,
});

describe("a pump relay that clicks on the bench, full volts in every pair of sockets, and a silent pump", () => {
  // ford-trucks.com/forums/1685875-e-150-good-fuel-pump-won-t-turn: battery at 30–87 and at 85–86 with the relay out. The
  // fault was not found; 100 Ω in the coil's ground wire are ours. Pull-in at 8 V: common practice, no source.
  const rig = buildRig({
    conditions: [choice("key", "off", "on")],
    components: [
      ignition,
      relay("resistor"),
      {
        kind: "motor",
        id: "M1",
        title: "Fuel pump",
        windingOhmsAt20: 0.6,
        torquePerAmp: 0.02,
        turning: { frictionTorque: 0.02, loadPerSpeedSquared: 3e-7 },
      },
    ],
    conductors: [
      wire("W2", "G1:+", "S1:30"),
      wire("W3", "S1:15", "K1:86"),
      wire("W4", "K1:85", "XE1"),
      wire("W5", "G1:+", "K1:30"),
      wire("W6", "K1:87", "M1:1"),
      wire("W7", "M1:2", "XE1"),
    ],
  });
  const faults: Fault[] = [{ kind: "seriesResistance", at: "W4", ohms: 100 }];
  const out = () => new Bench(rig, faults, { key: "on" }).do({ pullFuse: "K1" });
  it("shows the battery at 30–87, through the pump's winding, and at 85–86, unloaded", () => {
    const bench = out();
    near(bench.volts("K1:30", "K1:87"), bench.volts("G1:+"), 0.01);
    near(bench.volts("K1:86", "K1:85"), bench.volts("G1:+"), 0.01);
  });
  it("runs the pump with a jumper in 30–87", () => {
    const now = out().with({ kind: "resistor", id: "jumper", a: "K1:30", b: "K1:87", ohms: 0.02 });
    expect(now.amps("M1")).toBeGreaterThan(3);
  });
  it("does not pull in: 5.5 V are left for the coil with the relay fitted", () => {
    const bench = new Bench(rig, faults, { key: "on" });
    near(bench.volts("K1:86", "K1:85"), 5.47, 0.05); // 85 Ω beside 680 Ω, behind 100 Ω
    expect(Math.abs(bench.now.amps("M1"))).toBeLessThan(0.01);
    expect(new Bench(rig, [], { key: "on" }).now.amps("M1")).toBeGreaterThan(3);
  });
  it("is shown by a test lamp across 85–86 as well: dark, most of the volts gone", () => {
    const lit = out().with({
      kind: "filament",
      id: "tester",
      a: "K1:86",
      b: "K1:85",
      ratedVolts: 12,
      ratedWatts: 3,
    });
    expect(lit.volts("K1:86") - lit.volts("K1:85")).toBeLessThan(4);
  });
});

describe("a relay's suppression diode and its polarity", () => {
  // MACS Service Reports, December 2021, and gwl.eu on relay polarity: a diode the wrong way round is a dead short across
  // the coil's feed; a plain coil and one with a resistor work either way round.
  const rig = (suppressor: "none" | "resistor" | "diode", swapped: boolean) => {
    const [plus, minus] = swapped ? ["K1:85", "K1:86"] : ["K1:86", "K1:85"];
    const coil: Conductor[] = [
      wire("W4", "F1:2", plus ?? "", 1, 0.75),
      wire("W5", minus ?? "", "XE1", 1, 0.75),
    ];
    return buildRig({
      conditions: [choice("key", "off", "on")],
      components: [
        ignition,
        { kind: "fuse", id: "F1", title: "Coil feed", ratingAmps: 5, form: "F", coldOhms: 0.017 },
        relay(suppressor),
        { kind: "resistor", id: "R1", title: "Load", ohms: 3 },
      ],
      conductors: [
        wire("W2", "G1:+", "S1:30"),
        wire("W3", "S1:15", "F1:1"),
        ...coil,
        wire("W6", "G1:+", "K1:30"),
        wire("W7", "K1:87", "R1:1"),
        wire("W8", "R1:2", "XE1"),
      ],
    });
  };
  const keyOn = (bench: Bench) => bench.do({ conditions: { key: "on" } });
  it.each([
    ["none", false],
    ["none", true],
    ["resistor", false],
    ["resistor", true],
    ["diode", false],
  ] as const)("suppressor %s, wires swapped %s: it works", (suppressor, swapped) => {
    const bench = keyOn(new Bench(rig(suppressor, swapped)));
    expect(bench.blownFuses).toEqual([]);
    expect(bench.now.amps("K1")).toBeGreaterThan(4);
  });
  it("blows the fuse with the wires swapped on a relay with diode, and again after a new fuse", () => {
    const bench = new Bench(rig("diode", true));
    expect(bench.blownFuses).toEqual([]);
    expect(keyOn(bench).blownFuses).toEqual(["F1"]);
    expect(Math.abs(bench.now.amps("K1"))).toBeLessThan(1e-6);
    expect(bench.do({ fitFuse: "F1", fresh: true }).blownFuses).toEqual(["F1"]);
  });
  it("blows it as well when the diode is in the relay the wrong way round", () => {
    const bench = new Bench(rig("diode", false), [{ kind: "diodeReversed", component: "K1" }]);
    expect(keyOn(bench).blownFuses).toEqual(["F1"]);
  });
});
