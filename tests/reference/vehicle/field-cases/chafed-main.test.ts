import type { Component, Fault } from "@probeworthy/vehicle";
import { describe, it } from "vitest";
import { buildRig, wire } from "../rig";
import { Bench, near } from "./bench";

const fuse = (id: string, ratingAmps: number): Component => ({
  kind: "fuse",
  id,
  title: `Fuse ${id}`,
  ratingAmps,
  form: "C",
  coldOhms: 0.077 / ratingAmps,
});
/** Current out of the battery, as an ammeter in its negative lead shows it. */
const drawn = (bench: Bench): number => -bench.now.amps("W1");

describe("2 A at the battery, nothing in the fuse box: a main cable chafed before every fuse", () => {
  // fenderbender.com, Tales from the bay. 6.3 Ω from 12.6 V and 2 A.
  const rig = buildRig({
    components: [
      fuse("F1", 10),
      fuse("F2", 15),
      { kind: "resistor", id: "R1", title: "Clock", ohms: 2400 },
      { kind: "resistor", id: "R2", title: "Alarm", ohms: 2400 },
    ],
    conductors: [
      wire("W2", "G1:+", "XS1", 0.4, 16),
      wire("W3", "XS1", "XS2", 0.25, 16),
      ...[1, 2].flatMap((n) => [
        wire(`W1${n}`, "XS2", `F${n}:1`),
        wire(`W2${n}`, `F${n}:2`, `R${n}:1`),
        wire(`W3${n}`, `R${n}:2`, "XE1"),
      ]),
    ],
    splices: ["XS1", "XS2"],
  });
  const chafed: Fault[] = [{ kind: "chafed", conductor: "W2", along: 0.3, ohms: 6.3 }];
  it("draws 2 A whatever fuse is pulled, and none of it passes the box", () => {
    const bench = new Bench(rig, chafed);
    near(drawn(bench), 2, 0.05);
    near(bench.now.amps("W3"), 0.01, 0.005);
    bench.do({ pullFuse: "F1" }, { pullFuse: "F2" });
    near(drawn(bench), 2, 0.05);
    near(bench.now.amps("W3"), 0, 1e-6);
  });
  it("is gone with the cable routed clear", () => near(drawn(new Bench(rig)), 0.01, 0.002));
  it("is 6.3 Ω by its own reading", () => {
    const bench = new Bench(rig, chafed).do({ pullFuse: "F1" }, { pullFuse: "F2" });
    near(bench.volts("G1:+") / drawn(bench), 6.3, 0.05);
  });
});
