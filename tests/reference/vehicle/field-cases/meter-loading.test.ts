import { type Fault, prepareVehicle, startState, thevenin } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, must, wire } from "../rig";
import { Bench, near } from "./bench";

describe("downstream of a blown fuse that leaks 30 MΩ, from 12.75 V", () => {
  // vansairforce.com showpost p=1182954: 11 V over the fuse and 1.75 V shown by a meter of about 5 MΩ; a 5 W lamp makes it 0.
  // The divider of leak and meter: 10 MΩ 3.19 V, 5 MΩ 1.82 V, 3 kΩ 1.3 mV.
  const rig = buildRig({
    components: [
      { kind: "fuse", id: "F1", title: "Fuse", ratingAmps: 10, form: "C", coldOhms: 0.0077 },
      { kind: "passive", id: "X8", title: "Socket of a consumer", terminals: ["1"] },
    ],
    conductors: [wire("W2", "G1:+", "F1:1"), wire("W3", "F1:2", "X8:1")],
  });
  const faults: Fault[] = [
    { kind: "fuseBlown", component: "F1" },
    { kind: "leak", at: "F1:1", other: "F1:2", ohms: 30e6 },
  ];
  const bench = new Bench(rig, faults);
  /** The rig's battery rests at 12.70 V, the report's at 12.75 V. */
  const scale = 12.75 / 12.7;
  it("the multimeter's 10 MΩ show 3.19 V", () => near(bench.volts("X8:1") * scale, 3.19, 0.02));
  it.each([
    [5e6, 1.82, 0.01],
    [3000, 0.0013, 0.0001],
  ])("a meter of %d Ω shows %f V", (ohms, volts, tolerance) => {
    const now = bench.with({ kind: "resistor", id: "meter", a: "X8:1", b: "G1:-", ohms });
    near((now.volts("X8:1") - now.volts("G1:-")) * scale, volts, tolerance);
  });
  it("a 5 W lamp leaves nothing of it", () => {
    const now = bench.with({
      kind: "filament",
      id: "lamp",
      a: "X8:1",
      b: "body",
      ratedVolts: 12,
      ratedWatts: 5,
    });
    expect(Math.abs(now.volts("X8:1"))).toBeLessThan(1e-4);
  });
});

describe("a loaded divider (authorea.com/users/88807/articles/127673)", () => {
  // 1 kΩ over 2 kΩ: two thirds of the supply behind 666.7 Ω; a 10 kΩ meter then reads 3.750 of 6 V.
  const rig = buildRig({
    components: [
      { kind: "resistor", id: "R1", title: "Upper", ohms: 1000 },
      { kind: "resistor", id: "R2", title: "Lower", ohms: 2000 },
    ],
    conductors: [wire("W2", "G1:+", "R1:1"), wire("W3", "R1:2", "R2:1"), wire("W4", "R2:2", "XE1")],
  });
  it("has the open volts and the source resistance of its equivalent", () => {
    const vehicle = must(prepareVehicle(rig));
    const source = must(thevenin(vehicle, must(startState(vehicle)), "R2:1", "G1:-"));
    near(source.openVolts / 12.7, 2 / 3, 1e-5);
    near(source.sourceOhms, 2000 / 3, 0.05);
  });
  it.each([
    [1e6, 3.997335],
    [10_000, 3.75],
    [667, 2.0005],
  ])("a meter of %d Ω reads %f V of 6 V", (ohms, volts) => {
    const now = new Bench(rig).with({ kind: "resistor", id: "meter", a: "R2:1", b: "G1:-", ohms });
    near(((now.volts("R2:1") - now.volts("G1:-")) * 6) / 12.7, volts, 5e-5);
  });
});

describe("fuse drop charts: current from millivolts over a fuse", () => {
  // Maker's cold resistance; 10 A, 1.0 mV → 130 mA: https://www.mvwautotechniek.nl/en/voltage-drop-over-fuses ;
  // small 15 A, 1.0 mV → 218 mA and 0.1 mV → 22 mA: nxtbook.com/nxtbooks/macs/servicereports_2017/?startid=JUN6
  it.each([
    ["10 A blade", "C", 10, 0.0077, 0.13, 1],
    ["15 A small blade", "F", 15, 0.00458, 0.218, 1],
    ["15 A small blade", "F", 15, 0.00458, 0.022, 0.1],
  ] as const)("%s form %s", (_, form, ratingAmps, coldOhms, amps, millivolts) => {
    const bench = new Bench(
      buildRig({
        components: [
          { kind: "fuse", id: "F1", title: "Fuse", ratingAmps, form, coldOhms },
          { kind: "resistor", id: "R1", title: "Draw", ohms: 12.7 / amps },
        ],
        conductors: [wire("W2", "G1:+", "F1:1"), wire("W3", "F1:2", "R1:1"), wire("W4", "R1:2", "XE1")],
      }),
    );
    near(bench.volts("F1:1", "F1:2") * 1000, millivolts, 0.05);
    near(bench.now.amps("F1"), amps, 0.0005);
  });
});
