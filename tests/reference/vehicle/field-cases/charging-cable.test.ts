import type { Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, number, wire } from "../rig";
import { Bench, near } from "./bench";

/** Alternator of 14.2 V at the battery's posts, 100 A of consumers there; its regulator senses where it is told to. */
const rig = (sense: "own" | "wire") =>
  buildRig({
    conditions: [number("engineSpeed", 2000, 0, 8000)],
    components: [
      {
        kind: "chargingSource",
        id: "G2",
        title: "Alternator",
        regulatedVolts: 14.2,
        outputOhms: 0.001,
        limitAmps: 180,
        speedCondition: "engineSpeed",
        minimumSpeed: 500,
        sense,
      },
      { kind: "resistor", id: "R1", title: "Consumers", ohms: 0.14 },
    ],
    conductors: [
      wire("W2", "G2:B+", "G1:+", 0.6, 35),
      wire("W3", "G2:31", "XE1", 0.1, 50),
      wire("W4", "G1:+", "R1:1", 0.1, 50),
      wire("W5", "R1:2", "XE1", 0.1, 50),
      ...(sense === "wire" ? [wire("W6", "G1:+", "G2:S", 1, 0.75)] : []),
    ],
  });
const bad: Fault[] = [{ kind: "seriesResistance", at: "W2", ohms: 0.01 }];

describe("resistance in a charge cable", () => {
  // excelauto.com altvdt: 0.01 Ω at 100 A is 1 V, good is below 0.2 V post to post, loaded. forabodiesonly 1771397: a stud far
  // above 14 V with a low battery is a break in the lead.
  it("a good cable drops less than 0.2 V at 100 A", () => {
    const bench = new Bench(rig("own"));
    expect(bench.now.amps("W2")).toBeGreaterThan(95);
    expect(bench.volts("G2:B+", "G1:+")).toBeLessThan(0.2);
  });
  it("10 mΩ drop 1 V for every 100 A", () => {
    const bench = new Bench(rig("own"), bad);
    near((bench.volts("G2:B+", "G1:+") / bench.now.amps("W2")) * 100, 1, 0.05);
  });
  it("leaves the battery low when the regulator looks at its own stud", () => {
    const bench = new Bench(rig("own"), bad);
    near(bench.volts("G2:B+", "G2:31"), 14.1, 0.15);
    expect(bench.volts("G1:+")).toBeLessThan(13.4);
  });
  it("lifts the stud above 15 V when the regulator looks at the battery", () => {
    const bench = new Bench(rig("wire"), bad);
    near(bench.volts("G1:+"), 14.2, 0.1);
    near(bench.volts("G2:B+", "G2:31"), 15.3, 0.3);
  });
  it("with the cable broken the stud stands far above 14 V and the battery sinks", () => {
    const bench = new Bench(rig("wire"), [{ kind: "open", at: "W2" }]);
    expect(bench.volts("G2:B+", "G2:31")).toBeGreaterThan(15);
    expect(bench.volts("G1:+")).toBeLessThan(12.7);
  });
});
