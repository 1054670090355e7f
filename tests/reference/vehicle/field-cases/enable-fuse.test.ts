import { fuseOpeningSeconds } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { Bench, near } from "./bench";
import { steeringRig, worked } from "./steering-rig";

describe("an accessory on the 5 A enable fuse: heavy steering, no code and no lamp", () => {
  // automotobuzz.com, EPS failure on my Tiago. An inflator takes some 8 A (our figure).
  const inflate = { conditions: { inflator: "on" } };
  it("blows by its time-current law, and not sooner", () => {
    const bench = new Bench(steeringRig).do(inflate);
    const amps = bench.now.amps("F2");
    near(amps, 8, 0.3);
    const seconds = fuseOpeningSeconds("F", 5, amps);
    expect(bench.wait(0.8 * seconds - 2).blownFuses).toEqual([]); // two seconds went with the change
    expect(bench.wait(0.4 * seconds).blownFuses).toEqual(["F2"]);
  });
  it("leaves the module without supply: it says nothing, lights nothing and does not assist", () => {
    const bench = new Bench(steeringRig)
      .do(inflate)
      .wait(600)
      .do({ conditions: { inflator: "off" } }, worked);
    expect(bench.now.modules.A1?.powered).toBe(false);
    expect(Math.abs(bench.now.amps("M1"))).toBeLessThan(0.01);
    expect(bench.now.amps("E1")).toBeLessThan(1e-3);
    expect(bench.status("A1", "C1555") & 0x29).toBe(0); // not failed, not stored, not failed since the last clear
    expect(bench.volts("X1.1:h")).toBeGreaterThan(12.5); // the big fuse is good
  });
  it("is cured by a new fuse with the inflator off", () => {
    const bench = new Bench(steeringRig).do(inflate).wait(600);
    bench.do({ conditions: { inflator: "off" } }, { pullFuse: "F2" }, { fitFuse: "F2", fresh: true }, worked);
    expect(bench.wait(60).blownFuses).toEqual([]);
    expect(bench.now.amps("M1")).toBeGreaterThan(60);
  });
});
