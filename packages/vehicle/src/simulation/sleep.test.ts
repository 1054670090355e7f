import { describe, expect, it } from "vitest";
import type { Fault } from "../document/fault";
import { Drive } from "../testing/drive";
import { lead, module, moduleRig, numberCondition, resistor } from "../testing/module-rig";

const supply = { terminal: "30", wakeVolts: 8, dropoutVolts: 6, quiescentAmps: 0.0005, runningAmps: 0.2 };

/** A1 stays awake while the key is on, A2 while it hears A1; A1 drives a lamp's worth of resistance. */
const rig = (faults: readonly Fault[] = []): Drive =>
  new Drive(
    faults,
    {},
    moduleRig({
      modules: [
        module("A1", ["H", "CH", "CL"], {
          supply: {
            ...supply,
            sleep: { afterSeconds: 60, asleepAmps: 0.004, stayAwake: { condition: "keyOn" } },
          },
          outputs: [{ kind: "highSide", name: "out", terminal: "H", on: 1, onOhms: 0.01 }],
          bus: {
            canHigh: "CH",
            canLow: "CL",
            terminationOhms: 120,
            dominantShare: 0.1,
            sends: [{ message: "alive", value: 1 }],
            receives: [],
          },
        }),
        module("A2", ["CH", "CL"], {
          supply: {
            ...supply,
            sleep: { afterSeconds: 30, asleepAmps: 0.006, stayAwake: { heard: "alive" } },
          },
          bus: {
            canHigh: "CH",
            canLow: "CL",
            terminationOhms: 120,
            dominantShare: 0.1,
            sends: [],
            receives: [{ message: "alive", from: "A1", substitute: 0 }],
          },
        }),
      ],
      components: [resistor("R1", 100)],
      conductors: [
        lead("W11", "A1:H", "R1:1"),
        lead("W12", "R1:2", "XE1"),
        lead("W13", "A1:CH", "A2:CH"),
        lead("W14", "A1:CL", "A2:CL"),
      ],
      conditions: [numberCondition("keyOn", 0)],
    }),
  );

describe("sleep", () => {
  it("comes after its time to the second, and the other follows when it hears nothing more", () => {
    const car = rig().wait(57);
    expect(car.now.modules.A1?.asleep).toBeUndefined();
    expect(car.amps("R1")).toBeGreaterThan(0.1);
    car.wait(2);
    expect(car.now.modules.A1).toMatchObject({ powered: true, asleep: true, signals: {} });
    expect(car.now.modules.A2?.asleep).toBeUndefined();
    expect(Math.abs(car.amps("R1"))).toBeLessThan(1e-5);
    car.wait(30);
    expect(car.now.modules.A2?.asleep).toBe(true);
    expect(car.amps("W1")).toBeCloseTo(0.01, 3);
  });

  it("ends at once when something keeps the module awake, and wakes the one that hears it", () => {
    const car = rig()
      .wait(200)
      .do({ conditions: { keyOn: 1 } });
    expect(car.now.modules.A1?.asleep).toBeUndefined();
    expect(car.now.modules.A2).toMatchObject({ powered: true, heard: { alive: true } });
    expect(car.now.modules.A2?.asleep).toBeUndefined();
    expect(car.amps("R1")).toBeGreaterThan(0.1);
    // The time begins anew.
    car
      .wait(500)
      .do({ conditions: { keyOn: 0 } })
      .wait(50);
    expect(car.now.modules.A1?.asleep).toBeUndefined();
    car.wait(10);
    expect(car.now.modules.A1?.asleep).toBe(true);
  });

  it("is the same in one piece and in many", () => {
    const whole = rig().wait(100);
    const pieces = rig();
    for (let i = 0; i < 20; i++) pieces.wait(5);
    expect(pieces.state.slow.modules).toEqual(whole.state.slow.modules);
  });

  it("does not come to a module that stays awake by a fault, nor to those that hear it", () => {
    const car = rig([{ kind: "staysAwake", component: "A1" }]).wait(3600);
    expect(car.now.modules.A1?.asleep).toBeUndefined();
    expect(car.amps("W1")).toBeGreaterThan(0.4);
  });

  it("survives storage as JSON", () => {
    const car = rig().wait(30);
    expect(car.state.slow.modules.A1?.idleSeconds).toBeCloseTo(32, 6);
    expect(JSON.parse(JSON.stringify(car.wait(100).state))).toEqual(car.state);
  });
});
