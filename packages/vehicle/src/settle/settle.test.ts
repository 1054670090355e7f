import { describe, expect, it } from "vitest";
import type { VehicleDocument } from "../document/vehicle-document";
import { settle } from "../simulation/settle";
import { thevenin } from "../simulation/thevenin";
import { benchVehicle } from "../testing/bench-vehicle";
import { Drive, idling, keyOn, must, turning } from "../testing/drive";
import { lead, module, moduleRig } from "../testing/module-rig";

describe("bridge", () => {
  it("meets its target and conserves power: feed power = load power + loss in the bridge", () => {
    const drive = new Drive([], turning(6));
    const { now } = drive;
    const target = now.modules.A1?.signals.target ?? 0;
    const amps = now.amps("M1");
    expect(amps).toBeCloseTo(target, 6);
    const volts = (a: string, b: string) => now.volts(a) - now.volts(b);
    const load = volts("X1.3:c", "X1.4:c") * amps;
    const loss = 0.008 * amps ** 2;
    // The feed also supplies the 100 kΩ input and nothing else.
    const feed = volts("X1.1:c", "X1.2:c") * (now.amps("W12") - now.volts("X1.1:c") / 100_000);
    expect(feed / (load + loss)).toBeCloseTo(1, 4);
  });
  it("turns the current round with the effort", () => {
    expect(new Drive([], turning(-6)).amps("M1")).toBeLessThan(-30);
  });
  it("stands at full duty when the feed cannot deliver the target", () => {
    const drive = new Drive([{ kind: "seriesResistance", at: "W14", ohms: 0.5 }], turning(6));
    expect(drive.amps("M1")).toBeLessThan(0.8 * drive.signal("target"));
    expect(drive.volts("X1.3:c", "X1.4:c") / drive.volts("X1.1:c", "X1.2:c")).toBeGreaterThan(0.97);
  });
  it("shuts off and stays off when its own load pulls the feed down", () => {
    const drive = new Drive([{ kind: "seriesResistance", at: "W12", ohms: 0.4 }], turning(7));
    expect(Math.abs(drive.amps("M1"))).toBeLessThan(1e-3);
    expect(drive.volts("X1.1:h")).toBeGreaterThan(13);
    expect(drive.now.modules.A1?.powered).toBe(true);
  });
});

describe("power", () => {
  it("goes with the fuse, also where nothing else in the car moves", () => {
    const rig = moduleRig({
      modules: [module("A1", [], {})],
      components: [{ kind: "fuse", id: "F1", title: "F1", ratingAmps: 10, form: "F", coldOhms: 0.007 }],
      conductors: [lead("W90", "F1:2", "A1:30")],
    });
    const drive = new Drive(
      [],
      {},
      {
        ...rig,
        conductors: rig.conductors.map((wire) =>
          wire.to === "A1:30" && wire.id !== "W90" ? { ...wire, to: "F1:1" } : wire,
        ),
      },
    );
    expect(drive.now.modules.A1?.powered).toBe(true);
    drive.do({ pullFuse: "F1" });
    expect(drive.now.modules.A1?.powered).toBe(false);
    drive.do({ fitFuse: "F1", fresh: false });
    expect(drive.now.modules.A1?.powered).toBe(true);
  });
  it("stays off when a module pulls its own supply below the drop-out, however often it is asked", () => {
    const drive = new Drive([{ kind: "seriesResistance", at: "W11", ohms: 40 }], keyOn);
    const first = drive.now;
    expect(first.modules.A1?.powered).toBe(false);
    expect(must(settle(drive.vehicle, first.state)).modules.A1?.powered).toBe(false);
  });
  it("has hysteresis: 7 V neither wakes nor stops a module that wakes at 8 V and stops at 6 V", () => {
    const drive = new Drive([], keyOn);
    const held = must(
      settle(drive.vehicle, drive.state, [
        {
          kind: "voltageSource",
          id: "bench",
          positive: "X2.1:h",
          negative: "X1.2:h",
          volts: 7,
          ohms: 0.0001,
        },
      ]),
    );
    expect(held.modules.A1?.powered).toBe(true);
    const off = new Drive([{ kind: "open", at: "W11" }], keyOn);
    const asleep = must(
      settle(off.vehicle, off.state, [
        { kind: "voltageSource", id: "bench", positive: "X2.1:h", negative: "X1.2:h", volts: 7, ohms: 0.01 },
      ]),
    );
    expect(asleep.modules.A1?.powered).toBe(false);
  });
  it("puts a law that contradicts itself to rest on the off side", () => {
    const document: VehicleDocument = structuredClone(benchVehicle);
    const module = document.components.find(({ id }) => id === "A1");
    if (module?.kind !== "module") throw new Error("no A1");
    // Drives its lamp exactly while the lamp is not driven.
    module.outputs = [
      {
        kind: "lowSide",
        name: "lamp",
        terminal: "L",
        on: { op: "greater", args: [{ volts: "L" }, 1] },
        onOhms: 0.1,
      },
    ];
    const drive = new Drive([], keyOn, document);
    expect(drive.volts("X2.8:h")).toBeGreaterThan(10);
  });
});

describe("a law that follows the voltage it pulls down itself", () => {
  it.each([0.05, 0.2, 0.35])("comes to rest on its own curve with %f Ω in the feed", (ohms) => {
    const document: VehicleDocument = structuredClone(benchVehicle);
    const module = document.components.find(({ id }) => id === "A1");
    if (module?.kind !== "module") throw new Error("no A1");
    // 40 A at 13 V and above, nothing at 9 V: an under-voltage derating of 10 A per volt.
    module.signals = [
      { name: "feed", value: { volts: "30" } },
      {
        name: "target",
        value: {
          table: [
            [9, 0],
            [13, 40],
          ],
          at: "feed",
        },
      },
      { name: "stopped", value: 0 },
      { name: "sumWrong", value: 0 },
    ];
    const drive = new Drive([{ kind: "seriesResistance", at: "W12", ohms }], idling, document);
    const amps = drive.amps("M1");
    const allowed = Math.min(40, Math.max(0, (drive.signal("feed") - 9) * 10));
    expect(amps).toBeGreaterThan(5);
    expect(amps).toBeCloseTo(allowed, 5);
  });
});

describe("bus", () => {
  it("averages 2.5 V plus and minus 1 V by the time a node talks: 0.2 of the time gives 2.70 and 2.30 V", () => {
    // Two modules of 0.1 each; ISO 11898-2 levels, mean = 2.5 ± share · 1 V.
    const drive = new Drive([], idling);
    expect(drive.volts("X9:6", "XE3:ring")).toBeCloseTo(2.7, 1);
    expect(drive.volts("X9:14", "XE3:ring")).toBeCloseTo(2.3, 1);
    expect(drive.volts("X9:6") + drive.volts("X9:14")).toBeCloseTo(5, 1);
  });
  it("reads 60 Ω with the key off, 120 Ω with one end unplugged, open with both, 0 with the wires together", () => {
    const ohms = (drive: Drive) => must(thevenin(drive.vehicle, drive.state, "X9:6", "X9:14")).sourceOhms;
    expect(ohms(new Drive())).toBeCloseTo(60, -1);
    expect(ohms(new Drive().do({ unplug: "X2" }))).toBeCloseTo(120, -1);
    expect(ohms(new Drive().do({ unplug: "X2" }).do({ unplug: "X5" }))).toBe(Number.POSITIVE_INFINITY);
    expect(ohms(new Drive([{ kind: "shortBetween", at: "X9:6", other: "X9:14", ohms: 0.1 }]))).toBeLessThan(
      1,
    );
  });
  it.each([
    [{ kind: "open", at: "W20" }, false],
    [{ kind: "shortToGround", at: "X9:6", ohms: 0.1 }, false],
    [{ kind: "shortBetween", at: "X9:6", other: "X9:14", ohms: 0.1 }, false],
    [{ kind: "shortToGround", at: "X9:14", ohms: 0.1 }, true], // CANL at ground still shows a difference when CANH rises
    [{ kind: "seriesResistance", at: "W20", ohms: 10 }, true],
  ] as const)("with %o a message is heard: %s", (fault, heard) => {
    const { modules } = new Drive([fault], idling).now;
    expect([modules.A1?.heard.engineSpeed, modules.A2?.heard.steeringLamp]).toEqual([heard, heard]);
  });
});

describe("fixtures", () => {
  it("load the circuit where they are placed, with private nodes of their own", () => {
    const drive = new Drive([], keyOn);
    const settled = must(
      settle(drive.vehicle, drive.state, [
        { kind: "resistor", id: "lead", a: "X2.1:h", b: "lampTip", ohms: 0.1 },
        { kind: "filament", id: "testLamp", a: "lampTip", b: "body", ratedVolts: 12, ratedWatts: 21 },
      ]),
    );
    expect(settled.amps("testLamp")).toBeCloseTo(1.75, 1);
    expect(settled.amps("F1") - drive.amps("F1")).toBeCloseTo(1.75, 1);
  });
  it("reach the blades of a pulled fuse, and a blown one is open there", () => {
    const meter = [
      { kind: "currentSource", id: "ohms", from: "F1:2:p", to: "F1:1:p", amps: 0.001 },
      { kind: "resistor", id: "input", a: "F1:1:p", b: "F1:2:p", ohms: 1e7 },
    ] as const;
    const good = new Drive().do({ pullFuse: "F1" });
    expect(must(settle(good.vehicle, good.state, meter)).amps("input") * 1e7).toBeCloseTo(0.001 * 0.0077, 9);
    const blown = new Drive([{ kind: "fuseBlown", component: "F1" }]).do({ pullFuse: "F1" });
    expect(must(settle(blown.vehicle, blown.state, meter)).amps("input")).toBeCloseTo(0.001, 7);
  });
  it("make the blades of a pulled fuse readable as any other point", () => {
    const drive = new Drive().do({ pullFuse: "F1" });
    // 12 V behind 1 kΩ onto blade 1, 1 kΩ from blade 2 to body: half of it at both, less nothing over the element.
    const bench = [
      { kind: "voltageSource", id: "supply", positive: "F1:1:p", negative: "body", volts: 12, ohms: 1000 },
      { kind: "resistor", id: "load", a: "F1:2:p", b: "body", ohms: 1000 },
    ] as const;
    const settled = must(settle(drive.vehicle, drive.state, bench));
    expect(settled.volts("F1:1:p")).toBeCloseTo(6, 4);
    expect(settled.volts("F1:2:p")).toBeCloseTo(6, 4);
    expect(must(settle(drive.vehicle, drive.state)).volts("F1:1:p")).toBe(0);
  });
  it("on a point that does not exist are refused", () => {
    const drive = new Drive();
    const result = settle(drive.vehicle, drive.state, [
      { kind: "resistor", id: "r", a: "X2.99:h", b: "body", ohms: 1 },
    ]);
    expect(result.ok ? undefined : result.error).toMatchObject({ code: "unknown_point", path: "X2.99:h" });
  });
});
