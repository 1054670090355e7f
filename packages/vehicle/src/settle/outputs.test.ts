import { describe, expect, it } from "vitest";
import type { Fault } from "../document/fault";
import { Drive } from "../testing/drive";
import { lead, module, moduleRig, numberCondition, resistor } from "../testing/module-rig";

const driverModule = (limitAmps?: number) =>
  module("A1", ["H", "L", "C+", "C-", "T", "B", "C"], {
    outputs: [
      {
        kind: "highSide",
        name: "high",
        terminal: "H",
        on: { condition: "high" },
        onOhms: 0.01,
        ...(limitAmps === undefined ? {} : { limitAmps }),
      },
      { kind: "lowSide", name: "low", terminal: "L", on: { condition: "low" }, onOhms: 0.01 },
      {
        kind: "chopper",
        name: "chopper",
        plus: "C+",
        minus: "C-",
        feed: "30",
        return: "31",
        duty: { condition: "duty" },
        hertz: 400,
        onOhms: 0.01,
      },
      {
        kind: "linear",
        name: "linear",
        terminal: "T",
        feed: "30",
        loadVolts: { condition: "loadVolts" },
        onOhms: 0.02,
      },
    ],
    internalLinks: [{ from: "B", to: "C", ohms: 0.5 }],
    signals: [
      { name: "highAmps", value: { amps: "high" } },
      { name: "chopperAmps", value: { amps: "chopper" } },
    ],
  });

const bench = (
  conditions: Record<string, number>,
  faults: readonly Fault[] = [],
  limitAmps?: number,
): Drive =>
  new Drive(
    faults,
    conditions,
    moduleRig({
      modules: [driverModule(limitAmps)],
      components: [
        resistor("R1", 4),
        resistor("R2", 6),
        resistor("R3", 1),
        resistor("R5", 10),
        {
          kind: "motor",
          id: "M1",
          title: "Blower",
          windingOhmsAt20: 0.3,
          torquePerAmp: 0.02,
          turning: { frictionTorque: 0.02, loadPerSpeedSquared: 2e-6 },
        },
      ],
      conductors: [
        lead("W11", "A1:H", "R1:1"),
        lead("W12", "R1:2", "XE1"),
        lead("W13", "XS1", "R2:1"),
        lead("W14", "R2:2", "A1:L"),
        lead("W15", "A1:C+", "R3:1"),
        lead("W16", "R3:2", "A1:C-"),
        lead("W17", "XS1", "M1:1"),
        lead("W18", "M1:2", "A1:T"),
        lead("W19", "XS1", "A1:B"),
        lead("W20", "A1:C", "R5:1"),
        lead("W21", "R5:2", "XE1"),
      ],
      conditions: ["high", "low", "duty", "loadVolts"].map((name) => numberCondition(name, 0)),
    }),
  );

describe("drivers", () => {
  it("let current through when on and next to none when off", () => {
    expect(Math.abs(bench({}).amps("R1"))).toBeLessThan(1e-5);
    const on = bench({ high: 1, low: 1 });
    expect(on.amps("R1")).toBeCloseTo(on.volts("XS1", "XE1:ring") / 4.01, 2);
    expect(on.amps("R2")).toBeCloseTo(on.volts("XS1", "XE1:ring") / 6.01, 2);
    expect(on.signal("highAmps")).toBeCloseTo(on.amps("R1"), 9);
  });

  it("switch off above their limit, and hold below it", () => {
    expect(Math.abs(bench({ high: 1 }, [], 3).amps("R1"))).toBeLessThan(1e-5);
    expect(bench({ high: 1 }, [], 4).amps("R1")).toBeGreaterThan(3);
  });

  it("stay off when dead, and leak when leaking", () => {
    const dead = bench({ high: 1 }, [{ kind: "driverDead", component: "A1", output: "high" }]);
    expect(Math.abs(dead.amps("R1"))).toBeLessThan(1e-5);
    const leaking = bench({}, [{ kind: "driverLeaking", component: "A1", output: "high", ohms: 96 }]);
    expect(leaking.amps("R1")).toBeCloseTo(leaking.volts("XS1", "XE1:ring") / 100, 4);
  });
});

describe("a chopper", () => {
  it("gives its load duty times the feed and takes that power from it", () => {
    const half = bench({ duty: 0.5 });
    const feed = half.volts("XS1", "XE1:ring");
    expect(half.amps("R3")).toBeCloseTo((0.5 * feed) / 1.0105, 2);
    expect(half.amps("WA130") - bench({}).amps("WA130")).toBeCloseTo(0.5 * half.amps("R3"), 6);
    expect(half.signal("chopperAmps")).toBeCloseTo(half.amps("R3"), 9);
  });

  it("is off at duty 0 and holds its duty between 0 and 1", () => {
    expect(Math.abs(bench({ duty: 0 }).amps("R3"))).toBeLessThan(1e-5);
    expect(bench({ duty: 7 }).amps("R3")).toBeCloseTo(bench({ duty: 1 }).amps("R3"), 9);
  });

  it("leaks from its feed when it leaks", () => {
    const leaking = bench({}, [{ kind: "driverLeaking", component: "A1", output: "chopper", ohms: 99 }]);
    expect(leaking.amps("R3")).toBeCloseTo(leaking.volts("XS1", "XE1:ring") / 100, 3);
  });
});

describe("a linear output", () => {
  it.each([2, 4, 8])("leaves a turning motor its %s V", (loadVolts) => {
    const rig = bench({ loadVolts });
    expect(rig.volts("A1:30", "A1:T")).toBeCloseTo(loadVolts, 6);
    expect(rig.amps("M1")).toBeGreaterThan(0.5);
  });

  it("does no more than fully on", () => {
    const rig = bench({ loadVolts: 50 });
    expect(rig.volts("A1:T", "A1:31") / rig.amps("M1")).toBeCloseTo(0.02, 3);
  });

  it("rests with an open load", () => {
    const rig = bench({ loadVolts: 4 }, [{ kind: "open", at: "W18" }]);
    expect(Math.abs(rig.amps("M1"))).toBeLessThan(1e-6);
  });
});

it("joins terminals inside a module", () => {
  const rig = bench({});
  expect(rig.amps("R5")).toBeCloseTo(rig.volts("XS1", "XE1:ring") / 10.5, 3);
});
