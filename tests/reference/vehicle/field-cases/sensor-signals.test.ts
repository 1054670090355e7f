import type { Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, number, plug, wire } from "../rig";
import { Bench, near } from "./bench";
import { module, modulePlug, op } from "./parts";

describe("a pedal whose second track has half the swing", () => {
  // cliosport.net/threads/ph2-172-throttle-circuit-fault.815564: 1.27 → 1.70 kΩ and 1.21 → 1.60 kΩ from signal to ground
  // with the plug off. Swing 0.98 → 3.68 V and half of it, code above 0.27 V of difference for 0.14 s: common service data
  // for such pedals. Tracks and series resistors are worked out from both.
  const tracks = [
    { n: "1", atRest: 0.196, atFull: 0.736, trackOhms: 796, outputOhms: 1114 },
    { n: "2", atRest: 0.098, atFull: 0.368, trackOhms: 1444, outputOhms: 1068 },
  ];
  const pins = ["V1", "G1", "S1", "V2", "G2", "S2"];
  const engine = module("A1", pins, {
    groundLinks: ["G1", "G2"].map((terminal) => ({ terminal, ohms: 0.01 })),
    rails: ["1", "2"].map((n) => ({ name: `rail${n}`, terminal: `V${n}`, volts: 5, limitAmps: 0.05 })),
    inputs: ["S1", "S2"].map((terminal) => ({ terminal, pull: { to: "ground" as const, ohms: 470_000 } })),
    signals: [
      { name: "first", value: { volts: "S1" } },
      { name: "second", value: { volts: "S2" } },
      {
        name: "difference",
        value: op("absolute", op("subtract", "first", op("multiply", 2, "second"))),
      },
    ],
    monitors: [
      {
        code: "P2138",
        text: "Pedal tracks do not agree",
        fails: op("greater", "difference", 0.27),
        matureSeconds: 0.14,
        hold: "live",
        warningLamp: true,
      },
    ],
  });
  const rig = buildRig({
    conditions: [number("pedal", 0, 0, 1), number("ambientTemperature", 15, -40, 50)],
    components: [
      engine,
      {
        kind: "positionSensor",
        id: "B1",
        title: "Pedal sensor",
        position: { condition: "pedal" },
        tracks: tracks.map(({ n, ...track }) => ({
          supply: `V${n}`,
          ground: `G${n}`,
          signal: `S${n}`,
          ...track,
        })),
      },
    ],
    connectors: [
      modulePlug("X1", engine),
      plug("X2", "B1", pins),
      {
        id: "X3",
        title: "White connector in between",
        rows: 1,
        columns: 6,
        cavities: pins.map((__, n) => ({ cavity: `${n + 1}` })),
      },
    ],
    conductors: [
      wire("W2", "G1:+", "X1.1"),
      wire("W3", "X1.2", "XE1"),
      ...pins.flatMap((__, n) => [
        wire(`W1${n}`, `X1.${n + 3}`, `X3.${n + 1}`),
        wire(`W2${n}`, `X3.${n + 1}/b`, `X2.${n + 1}`),
      ]),
    ],
  });
  const faults: Fault[] = [
    { kind: "intermittent", at: "X3.6", ohms: 100_000, condition: "ambientTemperature", below: 3 },
  ];
  it.each([
    [0, 1270, 1210, 0.98],
    [1, 1700, 1600, 3.68],
  ])("at pedal %d: nearly equal ohms, yet half the volts", (pedal, first, second, volts) => {
    const bench = new Bench(rig, [], { pedal });
    near(bench.volts("X2.3:h", "X2.2:h"), volts, 0.03);
    near(bench.volts("X2.6:h", "X2.5:h"), volts / 2, 0.03);
    bench.unplug("X2");
    near(bench.ohms("X2.3:c", "X2.2:c"), first, 5);
    near(bench.ohms("X2.6:c", "X2.5:c"), second, 5);
  });
  it.each([0, 0.25, 0.5, 0.75, 1])("is no fault at pedal %d", (pedal) => {
    expect(new Bench(rig, [], { pedal }).signal("A1", "difference")).toBeLessThan(0.05);
  });
  it("has its fault between white connector and module, and only near freezing", () => {
    const bench = new Bench(rig, faults, { pedal: 1 });
    expect(bench.signal("A1", "difference")).toBeLessThan(0.05);
    bench.do({ conditions: { ambientTemperature: -2 } });
    expect(bench.signal("A1", "difference")).toBeGreaterThan(0.27);
    near(bench.volts("X2.6:h", "X2.5:h"), 1.84, 0.03); // at the pedal the signal is whole
  });
});
