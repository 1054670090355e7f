import { describe, expect, it } from "vitest";
import { prepareVehicle } from "../compile/compile-vehicle";
import { type Fault, faultKinds } from "../document/fault";
import { faultAt } from "../document/fault-at";
import { faultTable } from "../document/fault-table";
import { listFaultPlaces } from "../document/list-fault-places";
import { benchVehicle } from "../testing/bench-vehicle";
import { Drive, idling, keyOn, released, turning } from "../testing/drive";

const healthy = new Drive([], turning(6));
const heavy = "heavy, but the wheels follow the steering wheel";

describe("open", () => {
  it("in a conductor takes the voltage from everything behind it and from nothing before it", () => {
    const drive = new Drive([{ kind: "open", at: "W11" }], idling);
    expect(drive.volts("F1:2")).toBeGreaterThan(13);
    expect(drive.volts("X2.1:h")).toBeCloseTo(0, 2);
    expect(drive.now.modules.A1?.powered).toBe(false);
  });
  it("in a contact divides the two faces of a mated cavity", () => {
    const drive = new Drive([{ kind: "open", at: "X2.1" }], idling);
    expect(drive.volts("X2.1:h")).toBeGreaterThan(13);
    expect(drive.volts("X2.1:c")).toBeCloseTo(0, 2);
  });
  it("in a ground contact lifts the module's ground to its supply", () => {
    const drive = new Drive([{ kind: "open", at: "XE2" }], idling);
    expect(drive.volts("XE2:ring")).toBeGreaterThan(8);
    expect(drive.now.modules.A1?.powered).toBe(false);
    expect(drive.amps("M1")).toBeCloseTo(0, 6);
  });
  it("inside a component is the same as an internal open, whichever way it is written", () => {
    const asPlace = new Drive([{ kind: "open", at: "M1:1" }], turning(6));
    const asPart = new Drive([{ kind: "internalOpen", component: "M1", terminal: "1" }], turning(6));
    expect(asPlace.amps("M1")).toBeCloseTo(0, 6);
    expect(asPart.volts("X4.1:h")).toBe(asPlace.volts("X4.1:h"));
    // The regulator winds up to full duty: the feed's voltage stands at the open winding.
    expect(asPart.volts("X4.1:h")).toBeGreaterThan(13);
  });
});

describe("seriesResistance", () => {
  it("drops voltage only under load", () => {
    const fault: Fault = { kind: "seriesResistance", at: "XE2", ohms: 0.06 };
    expect(new Drive([fault], idling).volts("XE2:ring")).toBeLessThan(0.05);
    const loaded = new Drive([fault], turning(6));
    expect(loaded.volts("XE2:ring")).toBeCloseTo(0.06 * loaded.amps("W13"), 1);
    expect(loaded.volts("XE2:ring")).toBeGreaterThan(0.5);
  });
  it("adds up when two faults sit at one place", () => {
    const one = new Drive([{ kind: "seriesResistance", at: "W28", ohms: 10 }], keyOn);
    const two = new Drive(
      [
        { kind: "seriesResistance", at: "W28", ohms: 4 },
        { kind: "seriesResistance", at: "W28", ohms: 6 },
      ],
      keyOn,
    );
    expect(two.volts("X5.1:h")).toBe(one.volts("X5.1:h"));
    expect(one.volts("F1:2") - one.volts("X5.1:h")).toBeCloseTo(10 * one.amps("W28"), 1);
  });
});

describe("shorts", () => {
  it("to ground blow the fuse before them, and the fresh one too", () => {
    const drive = new Drive([{ kind: "shortToGround", at: "X2.1:h", ohms: 0.02 }], keyOn);
    expect(drive.state.slow.blownFuses).toEqual(["F1"]);
    expect(drive.volts("F1:1")).toBeGreaterThan(12);
    expect(drive.volts("F1:2")).toBeCloseTo(0, 3);
    drive.do({ pullFuse: "F1" }).do({ fitFuse: "F1", fresh: true });
    expect(drive.state.slow.blownFuses).toEqual(["F1"]);
  });
  it("to ground leave the fuse alone while its circuit has no voltage", () => {
    const drive = new Drive([{ kind: "shortToGround", at: "X2.1:h", ohms: 0.02 }], { key: "off" });
    expect(drive.state.slow.blownFuses).toEqual([]);
    expect(drive.do({ conditions: keyOn }).state.slow.blownFuses).toEqual(["F1"]);
  });
  it("of the sensor supply to ground hold its current at the limit and both signals at nothing", () => {
    const drive = new Drive([{ kind: "shortToGround", at: "X3.1:h", ohms: 0.1 }], idling);
    expect(drive.volts("X3.1:h")).toBeLessThan(0.1);
    expect(drive.amps("W16")).toBeCloseTo(0.05, 3);
    expect(drive.volts("X2.4:h")).toBeLessThan(0.1);
  });
  it("to supply raise a signal to what it has chafed against", () => {
    const drive = new Drive([{ kind: "shortToSupply", at: "X2.4:h", supply: "XS2", ohms: 0.5 }], idling);
    expect(drive.volts("X2.4:h")).toBeGreaterThan(13);
    expect(drive.wait(2).codes()).toContain("C1511");
  });
  it("between two conductors bring both to one voltage", () => {
    const drive = new Drive(
      [{ kind: "shortBetween", at: "X3.3:h", other: "X3.4:h", ohms: 0.01 }],
      turning(6),
    );
    expect(drive.volts("X3.3:h")).toBeCloseTo(drive.volts("X3.4:h"), 3);
  });
});

describe("fuseBlown", () => {
  it("is open from the start; a fresh fuse holds", () => {
    const drive = new Drive([{ kind: "fuseBlown", component: "F2" }], turning(6));
    expect(drive.amps("M1")).toBeCloseTo(0, 6);
    expect(drive.now.symptoms[0]?.text).toBe(heavy);
    expect(drive.wait(2).codes()).toEqual(["C1552"]);
    drive.do({ pullFuse: "F2" }).do({ fitFuse: "F2", fresh: true }).wait(60);
    expect(drive.state.slow.blownFuses).toEqual([]);
    expect(drive.now.symptoms[0]?.text).toBe("light");
  });
});

describe("sensor faults", () => {
  it("offset moves one channel only", () => {
    const drive = new Drive([{ kind: "sensorOffset", component: "B1", channel: "T1", volts: 0.3 }], idling);
    const rest = new Drive([], idling);
    expect(drive.signal("torque1") - rest.signal("torque1")).toBeCloseTo(0.3, 1);
    expect(drive.signal("torque2")).toBeCloseTo(rest.signal("torque2"), 4);
  });
  it("stuck holds one channel while the other follows the effort", () => {
    const fault: Fault = { kind: "sensorStuck", component: "B1", channel: "T2", volts: 2.5 };
    const drive = new Drive([fault], turning(6));
    expect(drive.volts("X2.5:h", "X2.3:h")).toBeCloseTo(2.5, 1);
    expect(drive.volts("X2.4:h", "X2.3:h")).toBeCloseTo(healthy.volts("X2.4:h", "X2.3:h"), 2);
    expect(drive.wait(2).codes()).toEqual(["C1511"]);
  });
});

describe("motorHot", () => {
  it("is no defect: the current is held below the request and comes back by itself", () => {
    const drive = new Drive([{ kind: "motorHot", component: "M1", celsius: 140 }], turning(6));
    expect(drive.amps("M1")).toBeLessThan(0.6 * drive.signal("requested"));
    expect(drive.codes()).toEqual([]);
    drive
      .do({ conditions: released })
      .wait(900)
      .do({ conditions: turning(6) });
    expect(drive.amps("M1")).toBeCloseTo(drive.signal("requested"), 6);
  });
});

describe("weakBattery", () => {
  it("rests lower and sags further under load", () => {
    const fault: Fault = {
      kind: "weakBattery",
      component: "G1",
      stateOfCharge: 0.3,
      internalOhmsFactor: 6,
    };
    const [weak, good] = [new Drive([fault]), new Drive()];
    expect(good.volts("G1:+") - weak.volts("G1:+")).toBeGreaterThan(0.5);
    const sag = (drive: Drive) =>
      drive.volts("G1:+") - drive.do({ conditions: { key: "start" } }).volts("G1:+");
    expect(sag(weak)).toBeGreaterThan(5 * sag(good));
  });
});

describe("several faults at once", () => {
  it("act together", () => {
    const drive = new Drive(
      [
        { kind: "open", at: "W18" },
        { kind: "fuseBlown", component: "F2" },
      ],
      turning(6),
    );
    expect(drive.wait(3).codes()).toEqual(["C1511", "C1552"]);
  });
});

describe("places", () => {
  const refused: [Fault, string][] = [
    [{ kind: "open", at: "W99" }, "faults[0].at"],
    [{ kind: "shortToSupply", at: "X2.1:h", supply: "X2.99:h", ohms: 1 }, "faults[0].supply"],
    [{ kind: "fuseBlown", component: "M1" }, "faults[0].component"],
    [{ kind: "sensorStuck", component: "B1", channel: "V", volts: 1 }, "faults[0].channel"],
    [{ kind: "internalOpen", component: "M1", terminal: "3" }, "faults[0].terminal"],
  ];
  it.each(refused)("refuses %o and names the path", (fault, path) => {
    const result = prepareVehicle(benchVehicle, [fault]);
    expect(result.ok ? undefined : result.error).toMatchObject({ code: "invalid_fault", path });
  });

  it.each(faultKinds)(
    "takes a fault of the kind %s at every place that is listed for it, and starts with it",
    (kind) => {
      const places = listFaultPlaces(benchVehicle, kind);
      for (const [position, place] of places.entries()) {
        const fault = faultAt(kind, place, undefined, rest[kind]);
        expect(prepareVehicle(benchVehicle, [fault]).ok, place.title).toBe(true);
        if (position % 4 === 0) expect(new Drive([fault], idling).state.slow.seconds, place.title).toBe(2);
      }
    },
    60_000,
  );

  it("has a row that says what it is for every kind", () => {
    for (const kind of faultKinds) {
      const { title, meaning, priorRate, severity } = faultTable[kind];
      expect(title.length * meaning.length * priorRate, kind).toBeGreaterThan(0);
      if (severity?.scale === "log") expect(severity.minimum, kind).toBeGreaterThan(0);
      if (severity) expect(severity.maximum, kind).toBeGreaterThan(severity.minimum);
    }
  });
});

/** What a place does not say of a fault. */
const rest: Partial<Record<Fault["kind"], Record<string, string | number>>> = {
  shortToSupply: { supply: "F4:2" },
  intermittent: { condition: "engineSpeed", above: 500 },
  weakBattery: { internalOhmsFactor: 2 },
};
