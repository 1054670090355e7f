import type { Fault } from "@probeworthy/vehicle";
import { thevenin } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { suppliedFaults } from "./supplied-faults";
import { cranking, idling, keyOff, keyOn, must, TestDrive, turning } from "./test-drive";

const supply = "X12.2:h";
const signal1 = "X12.1:h";
const signal2 = "X12.5:h";
const ignitionFeed = "X11.2:h";
const batteryFeed = "X10.1:h";
const fullEffort = 10;

describe("the torque sensor (common practice, no source)", () => {
  it("rests at mid-supply on both signals with the engine running and no effort", () => {
    const drive = new TestDrive([], idling);
    expect(drive.volts(signal1)).toBeCloseTo(2.5, 1);
    expect(drive.volts(signal2)).toBeCloseTo(2.5, 1);
  });

  it("swings between about 1.7 V and 3.3 V, the signals in opposite directions", () => {
    const right = new TestDrive([], turning(fullEffort));
    const left = new TestDrive([], turning(-fullEffort));
    for (const [high, low] of [
      [right.volts(signal1), right.volts(signal2)],
      [left.volts(signal2), left.volts(signal1)],
    ] as const) {
      expect(high).toBeGreaterThan(3.2);
      expect(high).toBeLessThan(3.4);
      expect(low).toBeGreaterThan(1.6);
      expect(low).toBeLessThan(1.8);
    }
  });

  it.each([-10, -6, -2, 0, 2, 6, 10])("mirrors at %d N·m: the signals add up to the supply", (effort) => {
    const drive = new TestDrive([], turning(effort));
    const ground = "X12.4:h";
    const sum = drive.volts(signal1, ground) + drive.volts(signal2, ground);
    expect(Math.abs(sum - drive.volts(supply, ground))).toBeLessThan(0.05);
  });

  it("has its supply with the key on and 0 V with it off, its ground always", () => {
    expect(new TestDrive([], keyOn).volts(supply)).toBeCloseTo(5, 1);
    const off = new TestDrive([], keyOff);
    expect(Math.abs(off.volts(supply))).toBeLessThan(0.01);
    for (const conditions of [keyOff, keyOn, idling]) {
      const drive = new TestDrive([], conditions);
      expect(Math.abs(drive.volts("X15.1:h"))).toBeLessThan(0.05);
    }
    const source = must(thevenin(off.vehicle, off.state, "X15.1:h", "G1:-"));
    expect(source.sourceOhms).toBeLessThan(1);
  });

  it("twists the bar by 7 to 8 degrees at the most", () => {
    const drive = new TestDrive([], turning(fullEffort));
    expect(drive.liveValue("A1", "twist")).toBeGreaterThan(7);
    expect(drive.liveValue("A1", "twist")).toBeLessThan(8);
  });
});

describe("the feeds (common practice, no source)", () => {
  it("has the ignition feed live in ON and START only", () => {
    expect(Math.abs(new TestDrive([], keyOff).volts(ignitionFeed))).toBeLessThan(0.1);
    expect(Math.abs(new TestDrive([], { ...keyOff, key: "accessory" }).volts(ignitionFeed))).toBeLessThan(
      0.1,
    );
    expect(new TestDrive([], keyOn).volts(ignitionFeed)).toBeGreaterThan(12);
    expect(new TestDrive([], cranking).volts(ignitionFeed)).toBeGreaterThan(10);
  });

  it("has the battery feed live always", () => {
    for (const conditions of [keyOff, keyOn, idling, turning(6)])
      expect(new TestDrive([], conditions).volts(batteryFeed)).toBeGreaterThan(12);
    expect(new TestDrive([], cranking).volts(batteryFeed)).toBeGreaterThan(10);
  });

  it.each<[string, Fault]>([
    ["the ignition feed's fuse", { kind: "fuseBlown", component: "F11" }],
    ["the battery feed's fuse", { kind: "fuseBlown", component: "F2" }],
    ["the signal ground", { kind: "open", at: "W24" }],
    ["the power ground", { kind: "open", at: "W21" }],
  ])("gives no assist with %s open while the wheels still steer", (_name, fault) => {
    const drive = new TestDrive([fault], keyOn).wait(3).set(turning(6)).wait(3);
    expect(Math.abs(drive.motorAmps)).toBeLessThan(0.1);
    expect(drive.symptom("steeringWeight")).toMatchObject({ normal: false });
    expect(drive.symptom("steeringWeight").text).toContain("the wheels follow the steering wheel");
    expect(drive.symptom("steeringWarningLamp").normal).toBe(false);
  });

  it("answers no scan tool without ignition feed, and does without battery feed", () => {
    const asleep = new TestDrive([{ kind: "fuseBlown", component: "F11" }], idling).wait(3);
    expect(asleep.codes("A1")).toBeUndefined();
    expect(asleep.codes("A4")).toEqual(["U0131-87"]);
    const awake = new TestDrive([{ kind: "fuseBlown", component: "F2" }], idling).wait(3);
    expect(awake.codes("A1")).toEqual(["C1421-16"]);
  });
});

describe("a new fuse in F11 (common practice, no source)", () => {
  const cause = (id: string) => suppliedFaults.find((fault) => fault.id === id)?.faults("middle") ?? [];
  const afterNewFuse = (id: string) =>
    new TestDrive(cause(id), keyOn).set(keyOff).fitNewFuse("F11").set(keyOn).state.slow.blownFuses;

  it("holds when the old one had blown for no lasting reason", () => {
    expect(new TestDrive(cause("ignition-feed-fuse-blown"), keyOn).state.slow.blownFuses).toEqual(["F11"]);
    expect(afterNewFuse("ignition-feed-fuse-blown")).toEqual([]);
  });

  it.each(["ignition-feed-short", "ignition-feed-short-dash", "ignition-feed-short-column"])(
    "blows at the next key-on with %s, and takes no bigger fuse with it",
    (id) => {
      expect(afterNewFuse(id)).toEqual(["F11"]);
    },
  );
});

describe("assist (common practice, no source)", () => {
  it("needs a running engine", () => {
    expect(new TestDrive([], { ...keyOn, steeringEffort: 6 }).motorAmps).toBeCloseTo(0, 2);
    expect(new TestDrive([], turning(6)).motorAmps).toBeGreaterThan(30);
  });

  it("pushes to the side of the hands, equally to both", () => {
    const right = new TestDrive([], turning(6)).motorAmps;
    const left = new TestDrive([], turning(-6)).motorAmps;
    expect(right).toBeGreaterThan(0);
    expect(Math.abs(right + left)).toBeLessThan(0.02 * right);
  });

  it("never rises with road speed and falls to less than half on the motorway", () => {
    const amps = [0, 20, 40, 60, 80, 100, 120].map((speed) => new TestDrive([], turning(6, speed)).motorAmps);
    for (const [position, value] of amps.entries())
      if (position > 0) expect(value).toBeLessThanOrEqual((amps[position - 1] ?? 0) + 1e-6);
    expect(amps.at(-1)).toBeLessThan(0.5 * (amps[0] ?? 0));
  });

  it("in thermal protection stays below its target, sets no code, and recovers by itself after cooling", () => {
    const hot: Fault = { kind: "motorHot", component: "M1", celsius: 165 };
    const drive = new TestDrive([hot], turning(6));
    expect(drive.liveValue("A1", "actualAmps")).toBeLessThan(0.5 * drive.liveValue("A1", "targetAmps"));
    expect(drive.wait(5).codes("A1")).toEqual([]);
    expect(drive.symptom("steeringWarningLamp").normal).toBe(true);
    drive.set(idling).wait(900).set(turning(6));
    expect(drive.liveValue("A1", "actualAmps")).toBeGreaterThan(0.97 * drive.liveValue("A1", "targetAmps"));
  });

  it("heats a cool motor into protection when full effort is held for minutes", () => {
    const drive = new TestDrive([], turning(9.5));
    const fresh = drive.motorAmps;
    for (let minute = 0; minute < 5; minute++) drive.wait(60);
    expect(drive.motorAmps).toBeLessThan(0.8 * fresh);
    expect(drive.codes("A1")).toEqual([]);
  });
});

describe("the bus", () => {
  // Two 120 Ω terminators side by side: 60 Ω; ISO 11898-2 practice as on
  // https://obd-cable.com/can-bus-health-check-multimeter-resistance-diagnosis ; one maker accepts 54 to 69 Ω.
  const ohms = (drive: TestDrive) => must(thevenin(drive.vehicle, drive.state, "X80:6", "X80:14")).sourceOhms;

  it("reads about 60 Ω at the diagnostic socket, about 120 Ω with one end unplugged", () => {
    const both = ohms(new TestDrive());
    expect(both).toBeGreaterThan(54);
    expect(both).toBeLessThan(69);
    // The far end is the resistor R1, which the body module's connector cuts off; the cluster's own plug ends nothing.
    for (const end of ["X20", "X105"]) {
      const one = ohms(new TestDrive().unplug(end));
      expect(one).toBeGreaterThan(115);
      expect(one).toBeLessThan(125);
    }
  });

  it("carries the speeds from the modules that measure them to the steering", () => {
    const drive = new TestDrive([], turning(0, 60));
    expect([drive.liveValue("A3", "roadSpeed"), drive.liveValue("A1", "roadSpeed")]).toEqual([60, 60]);
    expect([drive.liveValue("A2", "engineSpeed"), drive.liveValue("A1", "engineSpeed")]).toEqual([850, 850]);
  });

  it("averages to 5 V over both wires, high above low", () => {
    // Mean CANH = 2.5 + d, mean CANL = 2.5 − d with a dominant share d; their sum stays 5.0 V (nominal levels as on
    // public service pages).
    const drive = new TestDrive([], idling);
    const [high, low] = [drive.volts("X80:6"), drive.volts("X80:14")];
    expect(high).toBeGreaterThan(2.55);
    expect(high).toBeLessThan(3);
    expect(Math.abs(high + low - 5)).toBeLessThan(0.1);
  });
});
