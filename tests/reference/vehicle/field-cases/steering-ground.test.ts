import type { Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { Bench, near } from "./bench";
import { released, steeringRig, worked } from "./steering-rig";

describe("a braided strap rotted to a few strands", () => {
  // strikeengine.com, Chevy Silverado power steering problems fixed with $20 part. It names no figure: 60 mΩ are ours.
  const rotted: Fault[] = [{ kind: "seriesResistance", at: "W9", ohms: 0.06 }];
  it("shows nothing at rest and volts while the wheel is worked", () => {
    const bench = new Bench(steeringRig, rotted);
    expect(bench.volts("XS1")).toBeLessThan(0.05);
    expect(bench.do(worked).volts("XS1")).toBeGreaterThan(2);
  });
  it("puts out another module on that frame while the load lasts", () => {
    const bench = new Bench(steeringRig, rotted);
    expect(bench.now.modules.A2?.powered).toBe(true);
    expect(bench.do(worked).now.modules.A2?.powered).toBe(false);
    expect(bench.do(released).now.modules.A2?.powered).toBe(true);
    expect(new Bench(steeringRig).do(worked).now.modules.A2?.powered).toBe(true);
  });
});

describe("7 mV under load acquit the ground", () => {
  // fiatforum.com/threads/eps-electric-power-steering-faults.491623: motor's earth eye to battery negative, wheel worked.
  it("drops 7 mV over a good strap, a thirtieth of the 200 mV that are allowed", () => {
    const bench = new Bench(steeringRig).do(worked);
    near(bench.volts("XS1"), 0.007, 0.001);
    expect(bench.now.amps("M1")).toBeGreaterThan(60);
  });
  it("leaves the battery: rested above 12.5 V, down by more than a volt under the same load", () => {
    const weak: Fault[] = [
      { kind: "weakBattery", component: "G1", stateOfCharge: 0.9, internalOhmsFactor: 45 },
    ];
    const bench = new Bench(steeringRig, weak);
    expect(bench.volts("G1:+")).toBeGreaterThan(12.5);
    bench.do(worked);
    expect(bench.volts("G1:+")).toBeLessThan(11);
    expect(bench.volts("XS1")).toBeLessThan(0.02);
  });
});
