import type { Component, Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, wire } from "../rig";
import { Bench, near } from "./bench";
import { module, modulePlug, socket } from "./parts";

const main: Component = {
  kind: "fuse",
  id: "F1",
  title: "Main",
  ratingAmps: 60,
  form: "E",
  coldOhms: 0.0009,
};

describe("what a fault of a CAN pair does to its ohms and to its traffic", () => {
  // Service texts of several makers: 40 Ω with three terminators, 120 Ω with one, less than 54 Ω is a short, a stub that is
  // open cannot be seen, nor a wire on a feed or on ground. With CAN low on ground CAN high swings from 0 to about 3.0 V.
  const bus = { canHigh: "H", canLow: "L", dominantShare: 0.1, sends: [], receives: [] };
  const ends = ["A1", "A2"].map((id) => module(id, ["H", "L"], { bus: { ...bus, terminationOhms: 120 } }));
  const stub = module("A3", ["H", "L"], { bus: { ...bus, dominantShare: 0 } });
  const rig = buildRig({
    components: [main, ...ends, stub, socket],
    connectors: [...ends, stub].map((part, position) => modulePlug(`X${position + 1}`, part)),
    conductors: [
      wire("W2", "G1:+", "F1:1"),
      ...[1, 2, 3].flatMap((n) => [
        wire(`W1${n}`, "F1:2", `X${n}.1`),
        wire(`W2${n}`, `X${n}.2`, "XE1"),
        wire(`W3${n}`, `X${n}.3`, "XS1"),
        wire(`W4${n}`, `X${n}.4`, "XS2"),
      ]),
      wire("W51", "XS1", "X9:6"),
      wire("W52", "XS2", "X9:14"),
      wire("W53", "F1:2", "X9:16"),
      wire("W54", "X9:4", "XE1"),
    ],
    splices: ["XS1", "XS2"],
  });
  const lowToGround: Fault = { kind: "shortToGround", at: "X3.4:h", ohms: 0.1 };
  const highToGround: Fault = { kind: "shortToGround", at: "X3.3:h", ohms: 0.1 };
  const ohms: [string, Fault[], number][] = [
    ["good", [], 60],
    ["a third terminator", [{ kind: "terminatorExtra", at: "X3.3:h", other: "X3.4:h", ohms: 120 }], 40],
    ["one terminator lost", [{ kind: "terminatorMissing", component: "A2" }], 120],
    ["an open stub", [{ kind: "open", at: "W33" }], 60],
    ["a short of 20 Ω on a stub", [{ kind: "shortBetween", at: "X3.3:h", other: "X3.4:h", ohms: 20 }], 15],
    ["CAN low on ground", [lowToGround], 60],
    ["CAN high on a feed", [{ kind: "shortToSupply", at: "X3.3:h", supply: "F1:2", ohms: 0.1 }], 60],
  ];
  it.each(ohms)("%s, battery feed off", (_, faults, expected) => {
    near(
      new Bench(rig, [...faults, { kind: "fuseMissing", component: "F1" }]).ohms("X9:6", "X9:14"),
      expected,
      0.6,
    );
  });
  it("CAN low on ground: 0 V, and CAN high swings to about 3 V; the bus goes on", () => {
    const bench = new Bench(rig, [lowToGround]);
    near(bench.volts("X9:14"), 0, 0.03);
    near(bench.volts("X9:6") / 0.2, 3, 0.25); // dominant for a fifth of the time, 0 V else
    expect(bench.codes("A1")).toEqual([]);
  });
  it("CAN high on ground: the bus is dead", () => {
    expect(new Bench(rig, [highToGround]).codes("A1")).toBeUndefined();
  });
});

describe("a LIN wire under a multimeter", () => {
  // mvwautotechniek.nl/en/lin-bus-diagnosis: 12 V at rest, 6 to 9 V while it talks, 0 V shorted. The shares of dominant time
  // are ours.
  const node = (id: string, role: "master" | "slave", dominantShare: number) =>
    module(id, ["W"], {
      lin: {
        terminal: "W",
        role,
        dominantShare,
        sends: [{ message: `from${id}`, value: 1 }],
        receives: [
          { message: `from${id === "A1" ? "A2" : "A1"}`, from: id === "A1" ? "A2" : "A1", substitute: 0 },
        ],
      },
    });
  const [master, slave] = [node("A1", "master", 0.22), node("A2", "slave", 0.2)];
  const rig = buildRig({
    components: [master, slave],
    connectors: [modulePlug("X1", master), modulePlug("X2", slave)],
    conductors: [
      ...[1, 2].flatMap((n) => [wire(`W1${n}`, "G1:+", `X${n}.1`), wire(`W2${n}`, `X${n}.2`, "XE1")]),
      wire("W3", "X1.3", "X2.3"),
    ],
  });
  const wireVolts = (...faults: Fault[]) => new Bench(rig, faults).volts("X1.3:h");
  const silent = (component: string): Fault => ({ kind: "silentNode", component });
  it("reads 6 to 9 V while both talk", () => near(wireVolts(), 7.5, 1.5));
  it("reads nearly the battery with both silent", () =>
    near(wireVolts(silent("A1"), silent("A2")), 12.3, 0.4));
  it("reads 0 V on ground", () =>
    near(wireVolts({ kind: "shortToGround", at: "X2.3:h", ohms: 0.1 }), 0, 0.01));
  it("reads higher with the slave missing, and the master hears nothing of it", () => {
    expect(wireVolts(silent("A2"))).toBeGreaterThan(wireVolts() + 1);
    expect(new Bench(rig, [silent("A2")]).now.modules.A1?.heard.fromA2).toBe(false);
    expect(new Bench(rig).now.modules.A1?.heard.fromA2).toBe(true);
  });
});
