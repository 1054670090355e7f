import {
  advanceMotorHeat,
  batteryOpenVolts,
  cableOhmsPerMetre,
  clearedStatus,
  conductorOhms,
  copperOhmsAt,
  faultCodeFromBytes,
  fuseOpeningSeconds,
  statusBit,
  statusText,
  thermistorOhms,
} from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";

describe("copper", () => {
  // http://www.t3-pedia.de/index.php?oldid=3089&title=Autoelektrik_Grundlagen (DIN ISO 6722-3), 1 to 120 mm²;
  // 0.35 and 0.75 mm² from memory. mΩ/m at 20 °C, maxima.
  it.each([
    [0.35, 54.4],
    [0.5, 37.1],
    [0.75, 24.7],
    [1, 18.5],
    [1.5, 12.7],
    [2.5, 7.6],
    [4, 4.71],
    [6, 3.14],
    [10, 1.82],
    [16, 1.16],
    [25, 0.743],
    [35, 0.527],
    [50, 0.368],
    [70, 0.259],
    [95, 0.196],
    [120, 0.153],
  ])("%f mm² has %f mΩ/m", (area, milliohms) => {
    expect(cableOhmsPerMetre(area) * 1000).toBeCloseTo(milliohms, 9);
  });

  // IEC 60228 class 5, plain (https://bayka.de/servicebereich/technische_daten/leiterwiderstand): another standard's
  // maxima for flexible copper lie within 7 % of ours at every common size.
  it.each([
    [0.5, 39],
    [1, 19.5],
    [1.5, 13.3],
    [2.5, 7.98],
    [4, 4.95],
    [6, 3.3],
    [10, 1.91],
    [16, 1.21],
    [25, 0.78],
    [35, 0.554],
    [50, 0.386],
    [70, 0.272],
    [95, 0.206],
    [120, 0.161],
  ])("%f mm² agrees with class 5 copper, %f mΩ/m", (area, milliohms) => {
    const ratio = (cableOhmsPerMetre(area) * 1000) / milliohms;
    expect(ratio).toBeGreaterThan(0.93);
    expect(ratio).toBeLessThanOrEqual(1);
  });

  it("falls steadily with the cross-section, between and outside the table's sizes", () => {
    let last = Number.POSITIVE_INFINITY;
    for (let area = 0.13; area < 200; area *= 1.05) {
      expect(cableOhmsPerMetre(area)).toBeLessThan(last);
      last = cableOhmsPerMetre(area);
    }
  });

  it("never has less resistance than solid copper of that size: 17.241 Ω·mm²/km (tnlab.org, IEC 60228)", () => {
    for (let area = 0.13; area < 200; area *= 1.05)
      expect(cableOhmsPerMetre(area) * 1000 * area).toBeGreaterThan(17.241);
  });

  // Solid AWG, Ω per 1000 ft at 20 °C: http://hyperphysics.phy-astr.gsu.edu/hbase/tables/wirega.html
  // Area from d = 0.127 mm · 92^((36 − n)/39) (ASTM B258, from memory). Stranded maxima lie 2 to 14 % above solid copper.
  it.each([
    [10, 0.9989],
    [12, 1.588],
    [14, 2.525],
    [16, 4.016],
    [18, 6.385],
    [20, 10.15],
    [22, 16.14],
  ])(
    "AWG %i: stranded cable of that area has a little more than the solid wire's %f Ω/kft",
    (gauge, perThousandFeet) => {
      const diameter = 0.127 * 92 ** ((36 - gauge) / 39);
      const area = (Math.PI / 4) * diameter ** 2;
      const ratio = cableOhmsPerMetre(area) / (perThousandFeet / 304.8);
      expect(ratio).toBeGreaterThan(1.02);
      expect(ratio).toBeLessThan(1.14);
    },
  );

  it("3 m of 1.5 mm² at 8 A drop 304.8 mV; 2 m of 25 mm² at 200 A drop 297.2 mV (computed from the table)", () => {
    expect(conductorOhms(1.5, 3, 20) * 8).toBeCloseTo(0.3048, 6);
    expect(conductorOhms(25, 2, 20) * 200).toBeCloseTo(0.2972, 6);
  });

  it("0.5 mm² has 46.58 mΩ/m at 85 °C with α = 0.00393 (IEC 60028, from memory)", () => {
    expect(conductorOhms(0.5, 1, 85) * 1000).toBeCloseTo(46.58, 2);
  });

  // Correction factors of IEC 60228 (https://www.uecables.com/471-power-copper-conductors-according-to-iec-60228.html)
  // use 0.004 /K; at 100 °C they differ from ours by 0.4 %.
  it.each([
    [5, 1.064],
    [10, 1.042],
    [20, 1],
    [25, 0.98],
    [40, 0.926],
    [60, 0.862],
    [80, 0.806],
    [100, 0.758],
  ])("at %i °C the factor back to 20 °C is %f within 0.5 %%", (celsius, factor) => {
    expect(Math.abs(1 / copperOhmsAt(1, celsius) / factor - 1)).toBeLessThan(0.005);
  });
});

describe("fuse opening times", () => {
  // Littelfuse 297, 0997, 287, 257, 299 data sheets as transcribed in public project notes; the 257 entry gives the blade
  // windows as ISO 8820-3. DIN 72581-3: http://noiasca.rothschopf.net/deutsch/dkabel_sicherung.htm
  const hundredHours = 360_000;
  const open = Number.POSITIVE_INFINITY;
  const windows = {
    C: [
      [1.1, hundredHours, open],
      [1.35, 0.75, 600],
      [1.6, 0.25, 50],
      [2, 0.15, 5],
      [3.5, 0.08, 0.5],
      [6, 0, 0.15],
    ],
    F: [
      [1.1, hundredHours, open],
      [1.35, 0.75, 600],
      [2, 0.15, 5],
      [3.5, 0.08, 0.5],
      [6, 0.03, 0.1],
    ],
    E: [
      [1, hundredHours, open],
      [1.35, 60, 1800],
      [2, 2, 50],
      [3.5, 0.2, 7],
      [6, 0.04, 1],
    ],
  } as const;
  const rows = Object.entries(windows).flatMap(([form, gates]) =>
    gates.map((gate): [string, number, number, number] => [form, ...gate]),
  );
  it.each(rows)("form %s at %f times its rating opens within %f to %f s", (form, multiple, low, high) => {
    for (const rating of [5, 10, 20, 40, 60]) {
      const seconds = fuseOpeningSeconds(form as keyof typeof windows, rating, multiple * rating);
      expect(seconds).toBeGreaterThanOrEqual(low);
      expect(seconds).toBeLessThanOrEqual(high);
    }
  });

  it.each(["C", "F", "E", "bolted"] as const)("form %s opens sooner the higher the current", (form) => {
    let last = Number.POSITIVE_INFINITY;
    for (let multiple = 1.11; multiple < 40; multiple *= 1.02) {
      const seconds = fuseOpeningSeconds(form, 10, multiple * 10);
      expect(seconds).toBeLessThan(last);
      last = seconds;
    }
  });
});

describe("battery", () => {
  // Ver-Mac manual p. 42, manualshive.com/en/manual/ver-mac/pcms-series/1003075?page=50, at rest, 25 °C.
  it.each([
    [1, 12.7],
    [0.9, 12.58],
    [0.8, 12.46],
    [0.7, 12.36],
    [0.6, 12.28],
    [0.5, 12.2],
    [0.4, 12.12],
    [0.3, 12.02],
    [0.2, 11.88],
    [0.1, 11.72],
  ])("at %f of its charge rests at %f V", (charge, volts) => {
    expect(batteryOpenVolts(charge)).toBeCloseTo(volts, 9);
  });
  // Another source (https://studylib.net/doc/18054160/, citing BCI) gives 12.65, 12.45, 12.24, 12.06 V: within 0.12 V.
  it.each([
    [1, 12.65],
    [0.75, 12.45],
    [0.5, 12.24],
    [0.25, 12.06],
  ])("at %f agrees with the coarser published table, %f V, within 0.12 V", (charge, volts) => {
    expect(Math.abs(batteryOpenVolts(charge) - volts)).toBeLessThan(0.12);
  });
});

describe("thermistor", () => {
  // Coolant sensor, published nominal table: lemon-manuals.la/Jeep/2020/Compass…/1.4L,_2.4L/Operation
  const published = [
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
  const anchors = published.filter(([celsius]) => [-40, 25, 140].includes(celsius));
  it.each(published)("at %i °C has %f Ω, from three of the twenty points, within 0.02 K", (celsius, ohms) => {
    const slope = thermistorOhms(anchors, celsius + 0.5) - thermistorOhms(anchors, celsius - 0.5);
    // The table's last digit is coarse at the hot end: half of it is allowed on top.
    const digit = ohms < 1000 ? 0.05 : 0.5;
    expect(Math.abs(thermistorOhms(anchors, celsius) - ohms)).toBeLessThan(0.02 * Math.abs(slope) + digit);
  });
  // ILX/LDT appendix table A.1, https://manualsdump.com/…/ldt-5525/138826/41: fit through 0/25/50 °C.
  it.each([
    [10, 19549],
    [20, 12262],
    [30, 7908],
  ])("LDT table at %i °C, %i Ω, within 0.01 K", (celsius, ohms) => {
    const table = [
      [0, 32128],
      [25, 9814],
      [50, 3542],
    ] as const;
    const perKelvin = Math.abs(thermistorOhms(table, celsius + 0.5) - thermistorOhms(table, celsius - 0.5));
    expect(Math.abs(thermistorOhms(table, celsius) - ohms) / perKelvin).toBeLessThan(0.01);
  });
  it("with two points follows the beta law: 10 kΩ at 25 °C, 3640 K", () => {
    const at = (celsius: number) => 10_000 * Math.exp(3640 * (1 / (celsius + 273.15) - 1 / 298.15));
    const table = [
      [25, at(25)],
      [100, at(100)],
    ] as const;
    for (const celsius of [-40, 0, 60, 140])
      expect(thermistorOhms(table, celsius) / at(celsius)).toBeCloseTo(1, 9);
  });
});

describe("motor heat", () => {
  const heat = {
    windingToHousing: 0.5,
    housingToAmbient: 1.5,
    windingCapacity: 60,
    housingCapacity: 900,
    ambientCondition: "ambient",
  };
  const cold = { winding: 25, housing: 25 };
  // Two-node heat, 60 W, 25 °C: matrix exponential computed with SciPy.
  it.each([
    [30, 44.167, 25.716],
    [60, 51.981, 27.164],
    [300, 68.869, 40.453],
    [1200, 104.216, 75.065],
    [3600, 137.28, 107.441],
  ])("after %i s the winding has %f °C, the housing %f °C", (seconds, winding, housing) => {
    const now = advanceMotorHeat(heat, cold, 60, 25, seconds);
    expect(now.winding).toBeCloseTo(winding, 2);
    expect(now.housing).toBeCloseTo(housing, 2);
  });
  it("comes to rest at 145 and 115 °C: T = Ta + P·R", () => {
    const now = advanceMotorHeat(heat, cold, 60, 25, 1e6);
    expect([now.winding, now.housing]).toEqual([expect.closeTo(145, 6), expect.closeTo(115, 6)]);
  });
  it("two half steps make one whole step", () => {
    const half = advanceMotorHeat(heat, cold, 60, 25, 150);
    const whole = advanceMotorHeat(heat, cold, 60, 25, 300);
    expect(advanceMotorHeat(heat, half, 60, 25, 150).winding).toBeCloseTo(whole.winding, 9);
  });
  // One node, P = 25 W, Rth 1.8 K/W, τ 600 s, 35 °C (https://rftools.io/calculators/motor/motor-heat-dissipation gives
  // the steady 80 °C): a housing of no weight between makes the two-node law a one-node law.
  it.each([
    [60, 39.282],
    [300, 52.706],
    [600, 63.445],
    [1800, 77.76],
  ])("one-node motor after %i s: %f °C", (seconds, celsius) => {
    const single = {
      ...heat,
      windingToHousing: 0.9,
      housingToAmbient: 0.9,
      windingCapacity: 600 / 1.8,
      housingCapacity: 1e-6,
    };
    const now = advanceMotorHeat(single, { winding: 35, housing: 35 }, 25, 35, seconds);
    expect(now.winding).toBeCloseTo(celsius, 2);
  });
});

describe("fault codes and status", () => {
  it("splits two bytes as SAE J2012 does: 96 A1 is B16A1 (ptrnatesting.blogspot.com)", () => {
    expect(faultCodeFromBytes(0x96, 0xa1)).toBe("B16A1");
  });
  it.each([
    [0x55, 0x11, "C1511"],
    [0xc1, 0x31, "U0131"],
    [0x01, 0x18, "P0118"],
  ])("%i %i is %s (computed from the same rule)", (high, low, code) => {
    expect(faultCodeFromBytes(high, low)).toBe(code);
  });
  it("adds the failure type byte: U0131-87, missing message", () => {
    expect(faultCodeFromBytes(0xc1, 0x31, 0x87)).toBe("U0131-87");
  });
  it("reads 0x23 as bits 0, 1 and 5 (cartech8.com 663474)", () => {
    expect(statusText(0x23)).toEqual([
      "testFailed",
      "testFailedThisOperationCycle",
      "testFailedSinceLastClear",
    ]);
  });
  it("is 0x50 after a clear (from memory)", () => {
    expect(clearedStatus).toBe(0x50);
    expect(statusBit.testNotCompletedSinceLastClear | statusBit.testNotCompletedThisOperationCycle).toBe(
      0x50,
    );
  });
});
