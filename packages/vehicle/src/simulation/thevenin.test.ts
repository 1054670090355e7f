import { describe, expect, it } from "vitest";
import { testPoints } from "../points/test-points";
import { Drive, idling, keyOn, must, released, turning } from "../testing/drive";
import { settle } from "./settle";
import { thevenin } from "./thevenin";

const between = (drive: Drive, a: string, b: string) => must(thevenin(drive.vehicle, drive.state, a, b));

describe("thevenin", () => {
  it.each([
    ["key off", {}],
    ["key on", keyOn],
    ["idling", idling],
  ])(
    "foretells what a small load does to the voltage at every point: %s",
    (_, conditions) => {
      const drive = new Drive([], conditions);
      const { vehicle, state } = drive;
      const rest = must(settle(vehicle, state));
      let joined = 0;
      for (const { id } of testPoints(vehicle, state)) {
        const { openVolts, sourceOhms } = between(drive, id, "G1:-");
        expect(openVolts, id).toBeCloseTo(rest.volts(id) - rest.volts("G1:-"), 9);
        if (!Number.isFinite(sourceOhms) || sourceOhms === 0) continue;
        joined++;
        // Drawn off, not pushed in: a resting battery takes charge through another resistance than it delivers through.
        const amps = Math.min(0.01, 1e-5 / sourceOhms);
        const loaded = must(
          settle(vehicle, state, [{ kind: "currentSource", id: "load", from: id, to: "G1:-", amps }]),
        );
        const drop = openVolts - (loaded.volts(id) - loaded.volts("G1:-"));
        expect(drop / (amps * sourceOhms), id).toBeCloseTo(1, 3);
      }
      expect(joined).toBeGreaterThan(20);
    },
    60_000,
  );

  it("sees a resting battery as what it delivers through", () => {
    const { sourceOhms } = between(new Drive(), "G1:+", "G1:-");
    // The acceptance of a nearly full battery is some tenths of an ohm (physics/battery.ts).
    expect(sourceOhms).toBeGreaterThan(0.001);
    expect(sourceOhms).toBeLessThan(0.02);
  });

  it("counts a bridge with the duty it stands at: 1/R = 1/R(motor) + 1/(R(bridge) + duty²·R(feed))", () => {
    const load = (drive: Drive) => between(drive, "X1.3:c", "X1.4:c").sourceOhms;
    const drive = new Drive([], turning(6));
    const amps = drive.amps("M1");
    const duty = (drive.volts("X1.3:c", "X1.4:c") + 0.008 * amps) / drive.volts("X1.1:c", "X1.2:c");
    expect(duty).toBeGreaterThan(0.1);
    // With the key off the bridge is open; with no effort it stands at duty 0 and takes nothing from the feed.
    const feed = between(new Drive([], released), "X1.1:c", "X1.2:c").sourceOhms;
    expect(1 / (1 / load(drive) - 1 / load(new Drive()))).toBeCloseTo(0.008 + duty ** 2 * feed, 3);
  });

  it("has 0 Ω between two names of one node, and nothing between the blades of a melted fuse", () => {
    expect(between(new Drive(), "body", "XE1:body")).toEqual({ openVolts: 0, sourceOhms: 0 });
    const blades = (drive: Drive) => between(drive.do({ pullFuse: "F1" }), "F1:1:p", "F1:2:p");
    expect(blades(new Drive()).sourceOhms).toBeCloseTo(0.0077, 6);
    expect(blades(new Drive([{ kind: "fuseBlown", component: "F1" }]))).toEqual({
      openVolts: 0,
      sourceOhms: Number.POSITIVE_INFINITY,
    });
  });

  it("refuses a point that does not exist", () => {
    const { vehicle, state } = new Drive();
    const refused = thevenin(vehicle, state, "X2.1:h", "X2.99:h");
    expect(refused.ok ? undefined : refused.error).toMatchObject({ code: "unknown_point", path: "X2.99:h" });
  });
});
