import { type Component, type Conductor, parseChart, type VehicleDocument } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, differences, must, number, plug, wire } from "./rig";

/** A module that supplies a sensor with 5 V and measures through a pull-up. */
const thermistorRig = (table: readonly (readonly [number, number])[]): VehicleDocument =>
  buildRig({
    conditions: [number("coolant", 20)],
    components: [
      {
        kind: "module",
        id: "A1",
        title: "Engine module",
        terminals: ["30", "31", "SG", "R", "S"].map((name) => ({ name, function: name })),
        ground: "31",
        internalGroundOhms: 0.0005,
        groundLinks: [{ terminal: "SG", ohms: 0.001 }],
        supply: { terminal: "30", wakeVolts: 8, dropoutVolts: 6, quiescentAmps: 0, runningAmps: 0.1 },
        rails: [{ name: "five", terminal: "R", volts: 5, limitAmps: 0.1 }],
        inputs: [{ terminal: "S", pull: { to: { rail: "five" }, ohms: 1000 } }],
        signals: [],
      },
      {
        kind: "thermistor",
        id: "B1",
        title: "Coolant sensor",
        temperature: { condition: "coolant" },
        table: table.map(([celsius, ohms]): [number, number] => [celsius, ohms]),
      },
    ],
    connectors: [plug("X1", "A1", ["30", "31", "SG", "R", "S"]), plug("X2", "B1", ["1", "2"])],
    conductors: [
      wire("W2", "G1:+", "X1.1"),
      wire("W3", "X1.2", "XE1"),
      wire("W4", "X1.5", "X2.1"),
      wire("W5", "X1.3", "X2.2"),
    ],
  });

describe("coolant sensor through 1.0 kΩ from 5 V (saabwisonline.com, coolant-temperature-sensor-202)", () => {
  // Resistance bands of the same table, kΩ; the model takes their middle.
  const middle = [
    [-30, 25_000],
    [-10, 9200],
    [20, 2500],
    [40, 1150],
    [60, 617.5],
    [80, 330],
    [90, 250],
    [110, 150],
  ] as const;
  const volts = `terminal,against,function,condition,expected low,expected high,unit
X2.1,X2.2,Coolant sensor,coolant=-30,4.75,4.85,V
X2.1,X2.2,Coolant sensor,coolant=-10,4.45,4.55,V
X2.1,X2.2,Coolant sensor,coolant=20,3.55,3.65,V
X2.1,X2.2,Coolant sensor,coolant=40,2.65,2.75,V
X2.1,X2.2,Coolant sensor,coolant=60,1.85,1.95,V
X2.1,X2.2,Coolant sensor,coolant=80,1.15,1.25,V
X2.1,X2.2,Coolant sensor,coolant=90,0.95,1.05,V
X2.1,X2.2,Coolant sensor,coolant=110,0.645,0.655,V
`;
  const ohms = `terminal;against;function;condition;expected low;expected high;unit
X2.1:c;X2.2:c;Coolant sensor;"coolant=-30; unplugged=X2";20;30;kΩ
X2.1:c;X2.2:c;Coolant sensor;"coolant=-10; unplugged=X2";7,0;11,4;kΩ
X2.1:c;X2.2:c;Coolant sensor;"coolant=20; unplugged=X2";2,1;2,9;kΩ
X2.1:c;X2.2:c;Coolant sensor;"coolant=40; unplugged=X2";1,0;1,3;kΩ
X2.1:c;X2.2:c;Coolant sensor;"coolant=60; unplugged=X2";0,565;0,670;kΩ
X2.1:c;X2.2:c;Coolant sensor;"coolant=80; unplugged=X2";0,295;0,365;kΩ
X2.1:c;X2.2:c;Coolant sensor;"coolant=90; unplugged=X2";0,24;0,26;kΩ
X2.1:c;X2.2:c;Coolant sensor;"coolant=110; unplugged=X2";0,14;0,16;kΩ
`;
  it("agrees in all eight rows of volts to the printed digit", () => {
    expect(must(parseChart(volts, thermistorRig(middle))).rows).toHaveLength(8);
    expect(differences(thermistorRig(middle), volts)).toEqual([]);
  });
  it("agrees in all eight rows of ohms, typed with semicolons and decimal commas", () => {
    expect(differences(thermistorRig(middle), ohms)).toEqual([]);
  });
  it("differs in every row of volts with 1 kΩ in the return, most of all when hot", () => {
    const fault = { kind: "seriesResistance", at: "W5", ohms: 1000 } as const;
    const rows = differences(thermistorRig(middle), volts.replaceAll(",X2.2,", ",G1:-,"), [fault]);
    expect(rows.length).toBeGreaterThanOrEqual(7);
  });
});

describe("coolant sensor table of twenty rows (lemon-manuals.la/Jeep/2020/Compass…/1.4L,_2.4L/Operation)", () => {
  const rows = [
    [-40, 48805],
    [-30, 27414],
    [-20, 15971],
    [-10, 9620],
    [0, 5975],
    [10, 3816],
    [20, 2502],
    [25, 2044],
    [30, 1679],
    [40, 1152],
    [50, 806.9],
    [60, 575.8],
    [70, 418.1],
    [80, 308.6],
    [90, 231.2],
    [100, 175.7],
    [110, 135.2],
    [120, 105.4],
    [130, 83.1],
    [140, 66.2],
  ] as const;
  const csv = ["terminal,against,function,condition,expected low,expected high,unit"]
    .concat(
      rows.map(([celsius, ohms]) => {
        // 0.05 K either way: the published rows obey one law to 0.012 K.
        const share = (0.05 * 3900) / (celsius + 273.15) ** 2 + 0.0005;
        return `X2.1:c,X2.2:c,Sensor,coolant=${celsius}; unplugged=X2,${ohms * (1 - share)},${ohms * (1 + share)},Ω`;
      }),
    )
    .join("\n");
  it("is reproduced in every row by a sensor that knows three of them", () => {
    const three = rows.filter(([celsius]) => [-40, 25, 140].includes(celsius));
    expect(differences(thermistorRig(three), csv)).toEqual([]);
  });
  it("is not reproduced by a two-point law: −40 °C is 3.5 K off", () => {
    const two = rows.filter(([celsius]) => [25, 100].includes(celsius));
    expect(differences(thermistorRig(two), csv).join()).toContain("X2.1:c");
  });
});

/** Two bus modules with terminators and a third without. */
const busModule = (id: string, share: number, terminated: boolean): Component => ({
  kind: "module",
  id,
  title: id,
  terminals: ["30", "31", "H", "L"].map((name) => ({ name, function: name })),
  ground: "31",
  internalGroundOhms: 0.001,
  supply: { terminal: "30", wakeVolts: 8, dropoutVolts: 6, quiescentAmps: 0, runningAmps: 0.1 },
  bus: {
    canHigh: "H",
    canLow: "L",
    ...(terminated ? { terminationOhms: 120 } : {}),
    dominantShare: share,
    sends: [{ message: `alive${id}`, value: 1 }],
    receives: [],
  },
  signals: [],
});
const busRig = (modules: readonly Component[], powered: boolean): VehicleDocument =>
  buildRig({
    components: [...modules],
    connectors: modules.map(({ id }, position) => plug(`X${position + 1}`, id, ["30", "31", "H", "L"])),
    splices: ["XS1", "XS2", "XS3"],
    conductors: [
      ...(powered ? [wire("W2", "G1:+", "XS3")] : []),
      ...modules.flatMap((_, position): Conductor[] => {
        const n = position + 1;
        return [
          wire(`W${n}1`, `X${n}.3`, "XS1", 1, 0.5),
          wire(`W${n}2`, `X${n}.4`, "XS2", 1, 0.5),
          wire(`W${n}3`, `X${n}.2`, "XE1"),
          ...(powered ? [wire(`W${n}4`, `X${n}.1`, "XS3")] : []),
        ];
      }),
    ],
  });

describe("bus resistance without supply (obd-cable.com; displaysimulator.deere.com)", () => {
  const check = (terminators: number, low: string, high: string, unit = "Ω") => {
    const modules = [1, 2, 3].map((n) => busModule(`A${n}`, 0.05, n <= terminators));
    const csv = `terminal,against,function,condition,low,high,unit\nX1.3,X1.4,Bus,,${low},${high},${unit}\n`;
    return differences(busRig(modules, false), csv);
  };
  it("about 60 Ω with two terminators, inside the 54 to 69 Ω a maker accepts (mymitchell RM3560U)", () => {
    expect(check(2, "58.8", "60.5")).toEqual([]);
    expect(check(2, "54", "69")).toEqual([]);
  });
  it("about 40 Ω with three, about 120 Ω with one, open with none", () => {
    expect(check(3, "39", "40.5")).toEqual([]);
    expect(check(1, "116", "121")).toEqual([]);
    expect(check(0, "100", "", "kΩ")).toEqual([]);
  });
  it("and a chart that asks for 60 Ω says so when a terminator is missing", () => {
    expect(check(1, "54", "69")[0]).toMatch(/^X1\.3:h reads 120 Ω, above 54 to 69 Ω$/);
  });
});

describe("means of a running bus (displaysimulator.deere.com: CANH 2.7 to 3.3 V, CANL 1.7 to 2.3 V usual)", () => {
  it.each([0.05, 0.1, 0.15])(
    "two nodes of share %f: mean CANH = 2.5 + d, CANL = 2.5 − d, their sum 5.0 V",
    (share) => {
      const d = 2 * share;
      const rig = busRig([busModule("A1", share, true), busModule("A2", share, true)], true);
      const csv = `terminal,against,function,condition,low,high,unit
X1.3,XE1:body,CAN high,,${2.5 + d - 0.02},${2.5 + d + 0.02},V
X1.4,XE1:body,CAN low,,${2.5 - d - 0.02},${2.5 - d + 0.02},V
`;
      expect(differences(rig, csv)).toEqual([]);
    },
  );
});

const torqueRig = (supplyAmps = 0.005): VehicleDocument =>
  buildRig({
    conditions: [number("effort", 0, -20, 20)],
    components: [
      {
        kind: "module",
        id: "A1",
        title: "Steering module",
        terminals: ["30", "31", "V", "G", "T1", "T2"].map((name) => ({ name, function: name })),
        ground: "31",
        internalGroundOhms: 0.0005,
        groundLinks: [{ terminal: "G", ohms: 0.001 }],
        supply: { terminal: "30", wakeVolts: 8, dropoutVolts: 6, quiescentAmps: 0, runningAmps: 0.1 },
        rails: [{ name: "five", terminal: "V", volts: 5, limitAmps: 0.1 }],
        inputs: ["T1", "T2"].map((terminal) => ({
          terminal,
          pull: { to: "ground" as const, ohms: 100_000 },
        })),
        signals: [],
      },
      {
        kind: "torqueSensor",
        id: "B1",
        title: "Torque sensor",
        terminals: { supply: "V", ground: "G", signal1: "T1", signal2: "T2" },
        effort: { condition: "effort" },
        stiffness: 2,
        maximumTwist: 5,
        spanPerDegree: 0.05,
        trackOhms: 2000,
        outputOhms: 100,
        supplyAmps,
      },
    ],
    connectors: [
      plug("X1", "A1", ["30", "31", "V", "G", "T1", "T2"]),
      plug("X2", "B1", ["V", "G", "T1", "T2"]),
    ],
    conductors: [
      wire("W2", "G1:+", "X1.1"),
      wire("W3", "X1.2", "XE1"),
      wire("W4", "X1.3", "X2.1"),
      wire("W5", "X1.4", "X2.2"),
      wire("W6", "X1.5", "X2.3"),
      wire("W7", "X1.6", "X2.4"),
    ],
  });

describe("dual torque sensor (maker's service text RM3560U via mymitchell)", () => {
  const chart = `terminal,against,function,condition,expected low,expected high,unit
X2.1,X2.2,Supply,effort=0,4.5,5.5,V
X2.3,X2.2,Torque 1 at rest,effort=0,2.3,2.7,V
X2.4,X2.2,Torque 2 at rest,effort=0,2.3,2.7,V
X2.3,X2.2,Torque 1 to the right,effort=10,2.5,3.8,V
X2.4,X2.2,Torque 2 to the right,effort=10,1.2,2.5,V
X2.3,X2.2,Torque 1 to the left,effort=-10,1.2,2.5,V
X2.4,X2.2,Torque 2 to the left,effort=-10,2.5,3.8,V
`;
  it("rests and swings within the published limits", () => {
    expect(differences(torqueRig(), chart)).toEqual([]);
  });
  it.each([-20, -6, 0, 3, 10, 20])("mirrors: torque 1 + torque 2 = 5.0 V at an effort of %i", (effort) => {
    const document = torqueRig();
    const csv = (low: number, high: number) =>
      `terminal,against,function,condition,low,high,unit\nX2.3,X2.2,T1,effort=${effort},${low},${high},V\nX2.4,X2.2,T2,effort=${effort},${5 - high},${5 - low},V\n`;
    const expected = 2.5 + 0.25 * Math.max(-5, Math.min(5, effort / 2));
    expect(differences(document, csv(expected - 0.03, expected + 0.03))).toEqual([]);
  });
  it("shows a channel that has drifted out of its limits, and only that channel", () => {
    const rows = differences(torqueRig(), chart, [
      { kind: "sensorOffset", component: "B1", channel: "T1", volts: 0.4 },
    ]);
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.every((text) => text.startsWith("X2.3:h"))).toBe(true);
  });

  // Ratiometric sensors with a pull-down: HAC 830 p. 32 and TLE4997 p. 25 (datasheetandpdf.com).
  it("reads at most 4 % of the supply with its supply open, at least 96 % with its ground open", () => {
    const limits = (low: string, high: string) =>
      ["X2.3", "X2.4"].reduce(
        (csv, pin) => `${csv}${pin},X1.4,Signal,,${low},${high},V\n`,
        "terminal,against,function,condition,low,high,unit\n",
      );
    expect(differences(torqueRig(), limits("", "0.2"), [{ kind: "open", at: "W4" }])).toEqual([]);
    expect(differences(torqueRig(), limits("4.8", "5"), [{ kind: "open", at: "W5" }])).toEqual([]);
  });
});
