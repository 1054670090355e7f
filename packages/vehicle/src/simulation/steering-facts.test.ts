import { describe, expect, it } from "vitest";
import { benchVehicle } from "../testing/bench-vehicle";
import { Drive, idling, keyOn, released, turning } from "../testing/drive";

/** Facts of the trade, tried on the test-only sensor and module. Each of them: common practice, no source. */
describe("electric power steering (common practice, no source)", () => {
  it("both torque signals rest at 2.5 V with the engine running and no effort", () => {
    const drive = new Drive([], idling);
    for (const point of ["X2.4:h", "X2.5:h"]) expect(drive.volts(point, "X2.3:h")).toBeCloseTo(2.5, 1);
  });

  it("the signals swing in opposite directions between about 1.7 and 3.3 V", () => {
    const right = new Drive([], turning(20));
    const left = new Drive([], turning(-20));
    expect(right.volts("X2.4:h", "X2.3:h")).toBeCloseTo(3.3, 1);
    expect(right.volts("X2.5:h", "X2.3:h")).toBeCloseTo(1.7, 1);
    expect(left.volts("X2.4:h", "X2.3:h")).toBeCloseTo(1.7, 1);
    expect(left.volts("X2.5:h", "X2.3:h")).toBeCloseTo(3.3, 1);
  });

  it("the torsion bar twists 7 to 8° at most", () => {
    const drive = new Drive([], turning(20));
    const fraction = (drive.signal("torque1") - drive.signal("torque2")) / 2 / drive.signal("supply");
    const twist = fraction / (0.8 / 5 / 7.5);
    expect(twist).toBeGreaterThan(7);
    expect(twist).toBeLessThan(8);
  });

  it("the sensor supply is there with ignition on and 0 V with it off, its ground always", () => {
    const [on, off] = [new Drive([], keyOn), new Drive()];
    expect(on.volts("X3.1:h")).toBeCloseTo(5, 1);
    expect(off.volts("X3.1:h")).toBeCloseTo(0, 5);
    expect(on.volts("X3.2:h")).toBeLessThan(0.05);
    expect(off.volts("X3.2:h")).toBeCloseTo(0, 5);
  });

  it("the ignition feed sits on a 10 A class fuse, live in ON and START; the motor feed on a 60 A one, live always", () => {
    const rating = (id: string) =>
      benchVehicle.components.flatMap((part) =>
        part.kind === "fuse" && part.id === id ? [part.ratingAmps] : [],
      );
    expect([rating("F1"), rating("F2")]).toEqual([[10], [60]]);
    const feeds = (key: string) => {
      const drive = new Drive([], { key });
      return [drive.volts("X2.1:h") > 9, drive.volts("X1.1:h") > 9];
    };
    expect(feeds("off")).toEqual([false, true]);
    expect(feeds("on")).toEqual([true, true]);
    expect(feeds("start")).toEqual([true, true]);
  });

  it.each([
    { kind: "fuseBlown", component: "F1" },
    { kind: "fuseBlown", component: "F2" },
    { kind: "open", at: "W13" },
  ] as const)("no assist with %o, while the wheels still steer", (fault) => {
    const drive = new Drive([fault], turning(6));
    expect(Math.abs(drive.amps("M1"))).toBeLessThan(1e-3);
    expect(drive.now.symptoms[0]).toMatchObject({
      normal: false,
      text: "heavy, but the wheels follow the steering wheel",
    });
  });

  it("thermal protection holds the actual current below the request and ends by itself after cooling", () => {
    const drive = new Drive([], turning(8));
    expect(drive.amps("M1")).toBeCloseTo(drive.signal("requested"), 6);
    drive.wait(900);
    expect(drive.amps("M1")).toBeLessThan(0.9 * drive.signal("requested"));
    expect(drive.codes()).toEqual([]);
    drive
      .do({ conditions: released })
      .wait(1200)
      .do({ conditions: turning(8) });
    expect(drive.amps("M1")).toBeCloseTo(drive.signal("requested"), 6);
  });
});
