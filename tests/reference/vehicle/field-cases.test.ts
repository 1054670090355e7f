import {
  type Fault,
  prepareVehicle,
  settle,
  startState,
  thevenin,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, must, number, plug, wire } from "./rig";

/** Readings of one rig with faults and an instrument. */
function read(document: VehicleDocument, faults: readonly Fault[] = []) {
  const vehicle = must(prepareVehicle(document, faults));
  const state = must(startState(vehicle));
  return {
    vehicle,
    state,
    settle: (fixtures: Parameters<typeof settle>[2] = []) => must(settle(vehicle, state, fixtures)),
  };
}

describe("fuse drop charts: current from millivolts over a fuse", () => {
  // Maker's cold resistance; ATO 10 A, 1.0 mV → 130 mA: https://www.mvwautotechniek.nl/en/voltage-drop-over-fuses ;
  // MINI 15 A, 1.0 mV → 218 mA and 0.1 mV → 22 mA: nxtbook.com/nxtbooks/macs/servicereports_2017/?startid=JUN6
  it.each([
    ["10 A blade", "C", 10, 0.0077, 0.13],
    ["15 A small blade", "F", 15, 0.00458, 0.218],
    ["15 A small blade", "F", 15, 0.00458, 0.022],
  ] as const)("%s form %s", (_, form, ratingAmps, coldOhms, amps) => {
    const load = 12.7 / amps;
    const document = buildRig({
      components: [
        { kind: "fuse", id: "F1", title: "Fuse", ratingAmps, form, coldOhms },
        { kind: "resistor", id: "R1", title: "Draw", ohms: load },
      ],
      conductors: [wire("W2", "G1:+", "F1:1"), wire("W3", "F1:2", "R1:1"), wire("W4", "R1:2", "XE1")],
    });
    const now = read(document).settle();
    const millivolts = (now.volts("F1:1") - now.volts("F1:2")) * 1000;
    expect(millivolts).toBeCloseTo(amps > 0.1 ? 1 : 0.1, 2);
    expect(now.amps("F1")).toBeCloseTo(amps, 3);
  });
});

describe("a high-resistance sensor return (stangnet.com, TPS sensor VREF voltage below 5 volts)", () => {
  // 5 V supply, 4 kΩ track, 7.56 kΩ in the return: 1.73 V across the sensor, 3.27 V on its ground pin; wiper at 17 %.
  const document = buildRig({
    conditions: [number("pedal", -4, -10, 10)],
    components: [
      {
        kind: "module",
        id: "A1",
        title: "Engine module",
        terminals: ["30", "31", "V", "G", "S"].map((name) => ({ name, function: name })),
        ground: "31",
        internalGroundOhms: 0.0005,
        groundLinks: [{ terminal: "G", ohms: 0.001 }],
        supply: { terminal: "30", wakeVolts: 8, dropoutVolts: 6, quiescentAmps: 0, runningAmps: 0.1 },
        rails: [{ name: "five", terminal: "V", volts: 5, limitAmps: 0.1 }],
        signals: [],
      },
      // Two tracks of 8 kΩ side by side are one of 4 kΩ; only the first output is wired.
      {
        kind: "torqueSensor",
        id: "B1",
        title: "Position sensor",
        terminals: { supply: "V", ground: "G", signal1: "S", signal2: "N" },
        effort: { condition: "pedal" },
        stiffness: 1,
        maximumTwist: 10,
        spanPerDegree: 0.0825,
        trackOhms: 8000,
        outputOhms: 1,
        supplyAmps: 0,
      },
    ],
    connectors: [plug("X1", "A1", ["30", "31", "V", "G", "S"]), plug("X2", "B1", ["V", "G", "S", "N"])],
    conductors: [
      wire("W2", "G1:+", "X1.1"),
      wire("W3", "X1.2", "XE1"),
      wire("W4", "X1.3", "X2.1"),
      wire("W5", "X1.4", "X2.2"),
      wire("W6", "X1.5", "X2.3"),
    ],
  });
  const rig = read(document, [{ kind: "seriesResistance", at: "W5", ohms: 7560 }]);
  it("leaves 1.73 V between the pins and puts 3.27 V on the ground pin", () => {
    const now = rig.settle();
    expect(now.volts("X2.1:h") - now.volts("X2.2:h")).toBeCloseTo(1.73, 2);
    expect(now.volts("X2.2:h") - now.volts("G1:-")).toBeCloseTo(3.27, 2);
    expect(now.volts("X2.3:h") - now.volts("X2.2:h")).toBeCloseTo(0.294, 2);
  });
  it("gives 0.85 V and the full 5 V with a jumper from the ground pin to the battery", () => {
    const now = rig.settle([{ kind: "resistor", id: "jumper", a: "X2.2:h", b: "G1:-", ohms: 0.02 }]);
    expect(now.volts("X2.3:h") - now.volts("X2.2:h")).toBeCloseTo(0.85, 2);
    expect(now.volts("X2.1:h") - now.volts("X2.2:h")).toBeCloseTo(5, 2);
  });
});

describe("an open ground: voltmeter and test lamp disagree", () => {
  // 27 W lamp, ground open, tester from the ground pin to bare metal, computed with I ∝ V^0.55: 3 W tester 12.1/0.29 V,
  // 21 W 6.6/5.8 V, 27 W 6.2/6.2 V by symmetry (a published report gives 5.2/7.2 V for 27 W, outside any filament law).
  const document = buildRig({
    components: [{ kind: "lamp", id: "E1", title: "Lamp", ratedVolts: 12, ratedWatts: 27 }],
    connectors: [plug("X1", "E1", ["1", "2"])],
    conductors: [wire("W2", "G1:+", "X1.1"), wire("W3", "X1.2", "XE1")],
  });
  const rig = read(document, [{ kind: "open", at: "W3" }]);
  const tester = (ratedWatts: number) => {
    const now = rig.settle([
      { kind: "filament", id: "tester", a: "X1.2:h", b: "body", ratedVolts: 12, ratedWatts },
    ]);
    return { tester: now.volts("X1.2:h"), lamp: now.volts("X1.1:h") - now.volts("X1.2:h") };
  };
  it("a 3 W tester lights and the 27 W lamp stays dark with a few tenths of a volt", () => {
    const { tester: on, lamp } = tester(3);
    expect(on).toBeGreaterThan(12);
    expect(lamp).toBeGreaterThan(0.1);
    expect(lamp).toBeLessThan(0.5);
  });
  it("a 21 W tester shares the voltage, 6.6 : 5.8 of 12.4 V", () => {
    const { tester: on, lamp } = tester(21);
    expect(on / (on + lamp)).toBeGreaterThan(0.5);
    expect(on / (on + lamp)).toBeLessThan(0.65);
  });
  it("equal lamps share equally", () => {
    const { tester: on, lamp } = tester(27);
    expect(on / (on + lamp)).toBeCloseTo(0.5, 2);
  });
  it("a 10 MΩ voltmeter reads the full supply on both pins", () => {
    const now = rig.settle([{ kind: "resistor", id: "meter", a: "X1.2:h", b: "body", ohms: 1e7 }]);
    expect(now.volts("X1.2:h")).toBeCloseTo(now.volts("X1.1:h"), 3);
  });
});

describe("downstream of a blown fuse that leaks 30 MΩ, from 12.75 V", () => {
  // Divider of leak and meter: 10 MΩ 3.19 V, 5 MΩ 1.82 V, 3 kΩ 1.3 mV.
  const document = buildRig({
    components: [{ kind: "fuse", id: "F1", title: "Fuse", ratingAmps: 10, form: "C", coldOhms: 0.0077 }],
    conductors: [wire("W2", "G1:+", "F1:1"), wire("W3", "F1:2", "XS1"), wire("W4", "XS1", "XE1")],
    splices: ["XS1"],
  });
  const faults: Fault[] = [
    { kind: "fuseBlown", component: "F1" },
    { kind: "shortBetween", at: "F1:1", other: "F1:2", ohms: 30e6 },
    { kind: "open", at: "W4" },
  ];
  it.each([
    [10e6, 3.19, 2],
    [5e6, 1.82, 2],
    [3000, 0.0013, 4],
  ])("a meter of %i Ω reads %f V", (ohms, volts, digits) => {
    const now = read(document, faults).settle([
      { kind: "resistor", id: "meter", a: "F1:2", b: "G1:-", ohms },
    ]);
    // The rig's battery rests at 12.70 V, the report's at 12.75 V.
    expect((now.volts("F1:2") - now.volts("G1:-")) * (12.75 / 12.7)).toBeCloseTo(volts, digits);
  });
});

describe("a cable that carries 100 A", () => {
  it.each([
    [0.32, 0.0032],
    [0.1, 0.001],
    [0.8, 0.008],
  ])("%f V of drop are %f Ω", (volts, ohms) => {
    const document = buildRig({
      components: [{ kind: "resistor", id: "R1", title: "Starter", ohms: 0.1 }],
      conductors: [wire("W2", "G1:+", "R1:1", 0.01, 120), wire("W3", "R1:2", "XE1", 0.01, 120)],
    });
    const now = read(document, [{ kind: "seriesResistance", at: "W3", ohms }]).settle();
    const drop = now.volts("R1:2") - now.volts("XE1:ring");
    expect((drop / now.amps("R1")) * 100).toBeCloseTo(volts, 2);
  });
});

describe("a loaded divider (authorea.com/users/88807/articles/127673)", () => {
  // 1 kΩ over 2 kΩ: two thirds of the supply behind 666.7 Ω; a 10 kΩ meter then reads 3.750 of 6 V.
  const document = buildRig({
    components: [
      { kind: "resistor", id: "R1", title: "Upper", ohms: 1000 },
      { kind: "resistor", id: "R2", title: "Lower", ohms: 2000 },
    ],
    conductors: [wire("W2", "G1:+", "R1:1"), wire("W3", "R1:2", "R2:1"), wire("W4", "R2:2", "XE1")],
  });
  const rig = read(document);
  it("has the open volts and the source resistance of its equivalent", () => {
    const source = must(thevenin(rig.vehicle, rig.state, "R2:1", "G1:-"));
    expect(source.openVolts / 12.7).toBeCloseTo(2 / 3, 5);
    expect(source.sourceOhms).toBeCloseTo(2000 / 3, 1);
  });
  it.each([
    [1e6, 3.997335],
    [10_000, 3.75],
    [667, 2.0005],
  ])("a meter of %i Ω reads %f V of 6 V", (ohms, volts) => {
    const now = rig.settle([{ kind: "resistor", id: "meter", a: "R2:1", b: "G1:-", ohms }]);
    expect(((now.volts("R2:1") - now.volts("G1:-")) * 6) / 12.7).toBeCloseTo(volts, 4);
  });
});

describe("a lamp on a corroded return: 12.5 V, 7.5 V on the ground pin (technicians' forum report)", () => {
  // Computed with I ∝ V^0.54 for a 12.8 V / 55 W filament: 2.9 Ω in the return, 2.6 A; a constant lamp would give 4.5 Ω.
  it("reads about 7.5 V behind the lamp with 2.9 Ω in the return", () => {
    const document = buildRig({
      components: [{ kind: "lamp", id: "E1", title: "Lamp", ratedVolts: 12.8, ratedWatts: 55 }],
      conductors: [wire("W2", "G1:+", "E1:1"), wire("W3", "E1:2", "XE1")],
    });
    const now = read(document, [{ kind: "seriesResistance", at: "W3", ohms: 2.9 }]).settle();
    expect(now.volts("E1:2") * (12.5 / 12.7)).toBeCloseTo(7.5, 0);
    expect(now.amps("E1")).toBeCloseTo(2.6, 1);
  });
});
