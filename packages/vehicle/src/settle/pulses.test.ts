import { describe, expect, it } from "vitest";
import type { Fault } from "../document/fault";
import { Drive } from "../testing/drive";
import { lead, module, moduleRig, numberCondition, resistor } from "../testing/module-rig";

const rig = (conditions: Record<string, number>, faults: readonly Fault[] = []): Drive =>
  new Drive(
    faults,
    conditions,
    moduleRig({
      modules: [
        module("A1", ["S", "P+", "P-"], {
          inputs: [
            { terminal: "S", pull: { to: "ground", ohms: 100 }, pulseSwingVolts: 0.4 },
            {
              terminal: "P+",
              pull: { to: "ground", ohms: 100_000 },
              pulseSwingVolts: 0.5,
              pulseAgainst: "P-",
            },
            { terminal: "P-", pull: { to: "ground", ohms: 100_000 } },
          ],
          signals: [
            { name: "wheel", value: { hertz: "S" } },
            { name: "crank", value: { hertz: "P+" } },
          ],
        }),
      ],
      components: [
        {
          kind: "activeSpeedSensor",
          id: "B1",
          title: "Wheel speed",
          lowAmps: 0.007,
          highAmps: 0.014,
          minimumVolts: 4,
          hertz: { condition: "wheel" },
        },
        {
          kind: "passiveSpeedSensor",
          id: "B2",
          title: "Crankshaft",
          coilOhms: 900,
          peakVoltsPerHertz: 0.005,
          hertz: { condition: "crank" },
        },
        resistor("R9", 1e6),
      ],
      conductors: [
        lead("W11", "XS1", "B1:1"),
        lead("W12", "B1:2", "A1:S"),
        lead("W13", "B2:1", "A1:P+"),
        lead("W14", "B2:2", "A1:P-"),
        lead("W15", "XS1", "R9:1"),
        lead("W16", "R9:2", "XE1"),
      ],
      conditions: [numberCondition("wheel", 0), numberCondition("crank", 0)],
    }),
  );

describe("pulses", () => {
  it("are counted where they come from", () => {
    const now = rig({ wheel: 120, crank: 600 });
    expect(now.signal("wheel")).toBe(120);
    expect(now.signal("crank")).toBe(600);
  });

  it("are not there at standstill", () => {
    const now = rig({});
    expect(now.signal("wheel")).toBe(0);
    expect(now.now.alternating("A1:S", "A1:31")).toEqual({ volts: 0, hertz: 0 });
    expect(now.volts("A1:S", "A1:31")).toBeCloseTo(0.7, 3);
  });

  it("show a slow meter their mean, and an alternating reading half of their swing", () => {
    const { now } = rig({ wheel: 120 });
    expect(now.volts("A1:S") - now.volts("A1:31")).toBeCloseTo(1.05, 3);
    const seen = now.alternating("A1:S", "A1:31");
    expect(seen.volts).toBeCloseTo(0.35, 3);
    expect(seen.hertz).toBe(120);
    expect(now.alternating("XS1", "R9:1").volts).toBeLessThan(1e-4);
  });

  it("of a coil too slow to make the swing are not counted", () => {
    expect(rig({ crank: 40 }).signal("crank")).toBe(0);
    expect(rig({ crank: 60 }).signal("crank")).toBe(60);
  });

  it("shrink with resistance in the wire, and stop with an open one", () => {
    const weak: Fault = { kind: "seriesResistance", at: "W13", ohms: 200_000 };
    const { now } = rig({ crank: 60 }, [weak]);
    expect(now.modules.A1?.signals.crank).toBe(0);
    expect(rig({ crank: 600 }, [{ kind: "open", at: "W13" }]).signal("crank")).toBe(0);
  });
});
