import { describe, expect, it } from "vitest";
import { statusBit } from "../diagnosis/status-byte";
import { Drive, idling, keyOn, must, released, turning } from "../testing/drive";
import { advance } from "./advance";
import { scan } from "./scan";
import { settle } from "./settle";

const status = (drive: Drive, code: string, module = "A1") =>
  drive.state.slow.modules[module]?.status[code] ?? 0;

describe("monitors", () => {
  const openSignal = { kind: "open", at: "W18" } as const;

  it("mature after their time and not before", () => {
    const drive = new Drive([], turning(6));
    drive.state = { ...drive.state, slow: { ...drive.state.slow, blownFuses: ["F2"] } };
    expect(status(drive.wait(0.9), "C1552") & statusBit.testFailed).toBe(0);
    expect(status(drive.wait(0.2), "C1552") & statusBit.testFailed).toBe(statusBit.testFailed);
  });

  it("set the bits of ISO 14229-1: failed, in this cycle, pending, confirmed, since clear, lamp (0xAF)", () => {
    const drive = new Drive([openSignal], keyOn).wait(2);
    expect(status(drive, "C1511")).toBe(0xaf);
  });

  it("hold a code of the key cycle although the fault has gone, until the key has been off", () => {
    const drive = new Drive([], keyOn).do({ unplug: "X3" }).wait(2).do({ plug: "X3" }).wait(5);
    expect(drive.signal("sumWrong")).toBe(0);
    expect(drive.signal("stopped")).toBe(1);
    drive
      .do({ conditions: { key: "off" } })
      .do({ conditions: keyOn })
      .wait(2);
    expect(drive.signal("stopped")).toBe(0);
    expect(status(drive, "C1511") & statusBit.confirmedDTC).toBe(statusBit.confirmedDTC);
    expect(status(drive, "C1511") & statusBit.testFailed).toBe(0);
  });

  it("let a live code pass as soon as its condition passes", () => {
    const drive = new Drive([], idling).do({ pullFuse: "F2" }).wait(3);
    expect(status(drive, "C1552") & statusBit.testFailed).toBe(statusBit.testFailed);
    drive.do({ fitFuse: "F2", fresh: false }).wait(1);
    expect(status(drive, "C1552") & statusBit.testFailed).toBe(0);
    expect(drive.codes()).toEqual(["C1552"]);
  });

  it("go back to 0x50 when cleared, and pass on to not completed", () => {
    const drive = new Drive([openSignal], keyOn).wait(2).do({ conditions: { key: "off" } });
    const memory = status(drive, "C1511");
    // A module without supply does not take the order.
    expect(status(drive.do({ clearCodes: "A1" }), "C1511")).toBe(memory);
    const other = new Drive([], idling).do({ pullFuse: "F2" }).wait(3).do({ fitFuse: "F2", fresh: false });
    expect(other.wait(1).do({ clearCodes: "A1" }).codes()).toEqual([]);
    expect(status(other, "C1552") & statusBit.testFailedSinceLastClear).toBe(0);
  });

  it("keep their memory without supply, and show nothing then", () => {
    const drive = new Drive([openSignal], keyOn).wait(2).do({ pullFuse: "F1" });
    expect(drive.codes()).toBeUndefined();
    expect(status(drive, "C1511") & statusBit.confirmedDTC).toBe(statusBit.confirmedDTC);
    expect(drive.do({ fitFuse: "F1", fresh: false }).codes()).toEqual(["C1511"]);
  });
});

describe("heat and charge", () => {
  it("warms the winding by the current it carries, and the step taken does not matter much", () => {
    const drive = new Drive([], turning(4));
    const whole = must(advance(drive.vehicle, drive.state, 240)).slow.motors.M1?.winding ?? 0;
    let state = drive.state;
    for (let step = 0; step < 24; step++) state = must(advance(drive.vehicle, state, 10));
    expect(whole).toBeGreaterThan(45);
    expect(Math.abs((state.slow.motors.M1?.winding ?? 0) - whole)).toBeLessThan(1);
  });

  it("empties the battery by the ampere-hours drawn and charges it with the engine running", () => {
    const standing = new Drive([], keyOn);
    const amps = standing.amps("G1");
    const before = standing.state.slow.charge.G1 ?? 0;
    const after = standing.wait(3600).state.slow.charge.G1 ?? 0;
    expect(amps).toBeGreaterThan(0.3);
    expect((before - after) * 60).toBeCloseTo(amps, 2);
    const running = new Drive(
      [{ kind: "weakBattery", component: "G1", stateOfCharge: 0.5, internalOhmsFactor: 1 }],
      idling,
    );
    expect(running.amps("G1")).toBeLessThan(-5);
    expect(running.wait(600).state.slow.charge.G1).toBeGreaterThan(0.5);
  });

  it("keeps a running vehicle between 13.5 and 15 V (https://bekomcar.com/en/tutorial/alternator-voltage-testing-2500rpm)", () => {
    const drive = new Drive([], { key: "on", engineSpeed: 2500 });
    expect(drive.volts("G1:+")).toBeGreaterThan(13.5);
    expect(drive.volts("G1:+")).toBeLessThan(15);
  });
});

describe("fuses in time", () => {
  const overload = (ohms: number) => [{ kind: "resistor", id: "load", a: "F1:2", b: "body", ohms }] as const;
  it("count an overload that is spread over several short steps", () => {
    // About 19 A through 10 A: some seconds' life, taken in half seconds.
    const drive = new Drive([{ kind: "shortToGround", at: "X2.1:h", ohms: 0.62 }], { key: "off" });
    expect(must(settle(drive.vehicle, drive.state, overload(1))).amps("F1")).toBeCloseTo(0, 6);
    drive.do({ conditions: keyOn });
    const lived = drive.state.slow.blownFuses.length === 0;
    let halves = 0;
    while (drive.state.slow.blownFuses.length === 0 && halves < 20) {
      drive.wait(0.5);
      halves++;
    }
    expect(lived).toBe(false);
    expect(drive.state.slow.blownFuses).toEqual(["F1"]);
  });
  it("do not tire at their rating", () => {
    const drive = new Drive([{ kind: "shortToGround", at: "X2.1:h", ohms: 1.3 }], keyOn).wait(3600);
    expect(drive.amps("F1")).toBeGreaterThan(9);
    expect(drive.state.slow.blownFuses).toEqual([]);
  });
});

describe("scan", () => {
  it("reads values as the module sees them", () => {
    const answer = must(scan(new Drive([], turning(6)).vehicle, new Drive([], turning(6)).state, "A1"));
    expect(answer.ok && answer.values.map(({ name, text }) => [name, text])).toEqual([
      ["torque1", "2.99"],
      ["motorAmps", "35.8"],
    ]);
  });
  it("needs supply at the socket", () => {
    const drive = new Drive([{ kind: "fuseBlown", component: "F4" }], idling);
    expect(must(scan(drive.vehicle, drive.state, "A1"))).toMatchObject({
      ok: false,
      reason: "no_power_at_socket",
    });
  });
  it("needs a module with supply, and an open wire of the bus silences what lies behind it", () => {
    const off = new Drive();
    expect(must(scan(off.vehicle, off.state, "A1"))).toMatchObject({ ok: false, reason: "no_communication" });
    const cut = new Drive([{ kind: "open", at: "W20" }], idling).wait(3);
    expect(cut.codes("A1")).toBeUndefined();
    expect(cut.codes("A2")).toEqual(["U0131-87"]);
    expect(cut.signal("running")).toBe(0); // the substitute
  });
  it("refuses a module that does not exist", () => {
    const drive = new Drive();
    const answer = scan(drive.vehicle, drive.state, "A9");
    expect(answer.ok ? undefined : answer.error.code).toBe("unknown_id");
  });
  it("is unmoved by effort released", () => {
    expect(new Drive([], released).codes()).toEqual([]);
  });
});
