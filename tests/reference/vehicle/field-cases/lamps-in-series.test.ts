import type { Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, plug, wire } from "../rig";
import { Bench, near } from "./bench";
import { choice } from "./parts";

describe("a large and a small filament in series: the large one stays dark and nothing is faulty", () => {
  // Instructors' newsletter (campaign-archive db224f8374, June 2015): bulbs 1157 and 194. 27 W and 3.8 W with I ∝ V^0.55 from
  // 12.6 V give 0.29 V, 12.3 V and 0.25 A; rated 12.8 and 14 V, from memory.
  const rig = buildRig({
    components: [
      { kind: "lamp", id: "E1", title: "27 W lamp", ratedVolts: 12.8, ratedWatts: 27 },
      { kind: "lamp", id: "E2", title: "3.8 W lamp", ratedVolts: 14, ratedWatts: 3.8 },
    ],
    conductors: [wire("W2", "G1:+", "E1:1"), wire("W3", "E1:2", "E2:1"), wire("W4", "E2:2", "XE1")],
  });
  it("shares 12.6 V as 0.29 and 12.3 V at 0.25 A", () => {
    const bench = new Bench(rig);
    near(bench.volts("E1:1", "E1:2"), 0.29, 0.04);
    near(bench.volts("E2:1", "E2:2"), 12.4, 0.1); // the rig has 12.7 V
    near(bench.now.amps("E1"), 0.25, 0.01);
  });
});

describe("an open ground: voltmeter and test lamp disagree", () => {
  // 2carpros.com/questions/ford-f-150-1998, right rear brake light: a 27 W lamp, its ground open, a tester from the ground
  // pin to bare metal. The report has both lamps half bright; with I ∝ V^0.55 that is so only for equal lamps.
  const rig = buildRig({
    components: [{ kind: "lamp", id: "E1", title: "Brake lamp", ratedVolts: 12, ratedWatts: 27 }],
    connectors: [plug("X1", "E1", ["1", "2"])],
    conductors: [wire("W2", "G1:+", "X1.1"), wire("W3", "X1.2", "XE1")],
  });
  const bench = new Bench(rig, [{ kind: "open", at: "W3" }]);
  const [feed, ground] = ["X1.1:h", "X1.2:h"] as const;
  const share = (ratedWatts: number): number => {
    const now = bench.with({
      kind: "filament",
      id: "tester",
      a: ground,
      b: "body",
      ratedVolts: 12,
      ratedWatts,
    });
    return now.volts(ground) / now.volts(feed);
  };
  it("a 10 MΩ voltmeter reads the full supply on both pins", () => {
    near(bench.volts(ground, "body"), bench.volts(feed, "body"), 0.005);
  });
  it("a 3 W tester takes 12.1 of 12.4 V and the brake lamp stays dark", () =>
    near(share(3) * 12.4, 12.1, 0.15));
  it("a 21 W tester takes 7.6 V and the lamp the rest", () => {
    // (27/21)^(1/0.55) = 1.58 to 1. The 6.6 : 5.8 V once reckoned for it would need a current that rises with V^1.9.
    near(share(21) * 12.4, 7.6, 0.1);
  });
  it("equal lamps share equally; the 5.2 : 7.2 V once reckoned fit no filament law", () =>
    near(share(27), 0.5, 0.005));
});

describe("a trailer lamp with the reverse voltage across it", () => {
  // jcomeau.com/blog/2016-10-20-2101Z. Tail 5 W and turn 21 W on one cap each side, both caps grounded through the plug; the
  // car's own turn lamps sit on the same wires. Wattages are usual ones, from memory.
  const turnSignal = (id: string, side: string) => ({
    kind: "switch" as const,
    id,
    title: `Turn signal ${side}`,
    terminals: ["1", "2"],
    condition: "turn",
    positions: { off: [], left: [], right: [], [side]: [["1", "2"] as [string, string]] },
    contactOhms: 0.01,
  });
  const rear = (id: string) => ({
    kind: "twoFilamentLamp" as const,
    id,
    title: `Trailer lamp ${id}`,
    terminals: { common: "31", first: "58", second: "L" },
    ratedVolts: 12,
    firstWatts: 5,
    secondWatts: 21,
  });
  const rig = buildRig({
    conditions: [choice("turn", "off", "left", "right"), choice("tail", "off", "on")],
    components: [
      turnSignal("S1", "left"),
      turnSignal("S2", "right"),
      {
        kind: "switch",
        id: "S3",
        title: "Light switch",
        terminals: ["1", "2"],
        condition: "tail",
        positions: { off: [], on: [["1", "2"]] },
        contactOhms: 0.01,
      },
      rear("E1"),
      rear("E2"),
      { kind: "lamp", id: "E3", title: "Car's left turn lamp", ratedVolts: 12, ratedWatts: 21 },
      { kind: "lamp", id: "E4", title: "Car's right turn lamp", ratedVolts: 12, ratedWatts: 21 },
    ],
    conductors: [
      ...[1, 2, 3].map((n) => wire(`W1${n}`, "G1:+", `S${n}:1`)),
      wire("W21", "S1:2", "E1:L", 5, 1),
      wire("W22", "S2:2", "E2:L", 5, 1),
      wire("W23", "S3:2", "XS1", 5, 1),
      wire("W24", "XS1", "E1:58", 0.5, 1),
      wire("W25", "XS1", "E2:58", 0.5, 1),
      wire("W26", "S1:2", "E3:1"),
      wire("W27", "S2:2", "E4:1"),
      wire("W28", "E3:2", "XE1"),
      wire("W29", "E4:2", "XE1"),
      wire("W31", "E1:31", "XS2", 0.5, 1),
      wire("W32", "E2:31", "XS2", 0.5, 1),
      wire("W33", "XS2", "XE1", 5, 1),
    ],
    splices: ["XS1", "XS2"],
  });
  const open: Fault[] = [{ kind: "open", at: "W33" }];
  const overTurnLamp = (faults: Fault[], turning: string, tail: string) =>
    new Bench(rig, faults, { turn: turning, tail }).volts("E1:L", "E1:31");
  it("is positive with the turn signal, negative with the tail lamps, over the same two pins", () => {
    expect(overTurnLamp(open, "left", "off")).toBeGreaterThan(2);
    expect(overTurnLamp(open, "off", "on")).toBeLessThan(-0.1);
    expect(overTurnLamp([], "left", "off")).toBeGreaterThan(11.5);
    near(overTurnLamp([], "off", "on"), 0, 0.05);
  });
  it("brings the tail current home through the turn circuits that are off, none through the ground", () => {
    const { amps } = new Bench(rig, open, { tail: "on" }).now;
    const tail = amps("E1") + amps("E2");
    expect(tail).toBeGreaterThan(0.4);
    near(amps("E1:second") + amps("E2:second"), -tail, 0.001);
    near(amps("E3") + amps("E4"), tail, 0.001);
    near(amps("W33"), 0, 1e-6);
  });
});
