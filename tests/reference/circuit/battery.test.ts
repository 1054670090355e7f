import {
  type Battery,
  type CircuitElement,
  coldCrankingOhms,
  coldOhmsFactor,
  operatingPoint,
  quarterOpenVolts,
} from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

const battery = (numbers: Partial<Battery> = {}): Battery => ({
  kind: "battery",
  id: "g",
  positive: "b",
  negative: "0",
  capacityAmpereHours: 60,
  ...numbers,
});

/** Volts of a battery from which `amps` are drawn; negative amps charge it. */
function volts(numbers: Partial<Battery>, amps = 0): number {
  const load: CircuitElement = { kind: "currentSource", id: "i", from: "b", to: "0", amps };
  const result = operatingPoint({ ground: "0", elements: [battery(numbers), load] });
  if (!result.ok) throw new Error(result.error.message);
  expect(result.value.amps("g")).toBeCloseTo(-amps, 9);
  return result.value.volts("b");
}

/** Amps into a battery on a supply of some volts. */
function chargingAmps(numbers: Partial<Battery>, supply: number): number {
  const source: CircuitElement = {
    kind: "voltageSource",
    id: "v",
    positive: "b",
    negative: "0",
    volts: supply,
    ohms: 1e-3,
  };
  const result = operatingPoint({ ground: "0", elements: [battery(numbers), source] });
  if (!result.ok) throw new Error(result.error.message);
  return result.value.amps("g");
}

describe("open-circuit volts of a flooded battery", () => {
  // Source: Ver-Mac manual p. 42, manualshive.com/en/manual/ver-mac/pcms-series/1003075?page=50 : at rest, 25 °C.
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
  ])("at charge %d: %d V", (stateOfCharge, expected) => {
    expect(volts({ stateOfCharge })).toBeCloseTo(expected, 9);
  });

  // Source: discoverbattery.com, state-of-charge article, and studylib.net/doc/18054160 (cites BCI): 80 °F.
  const quarters = [
    [1, 12.65, 1.265],
    [0.75, 12.45, 1.225],
    [0.5, 12.24, 1.19],
    [0.25, 12.06, 1.155],
    [0, 11.89, 1.12],
  ] as const;
  it.each(quarters)("by the makers' quarter table at charge %d: %d V", (stateOfCharge, expected) => {
    const table = { openVolts: quarterOpenVolts, openVoltsCelsius: 26.7, celsius: 26.7 };
    expect(volts({ ...table, stateOfCharge })).toBeCloseTo(expected, 9);
  });

  it.each(quarters.slice(0, 3))(
    "differs from that table by no more than 0.06 V at charge %d",
    (stateOfCharge, expected) => {
      expect(Math.abs(volts({ stateOfCharge, celsius: 26.7 }) - expected)).toBeLessThanOrEqual(0.06);
    },
  );

  // From memory: open-circuit volts ≈ 6 · (specific gravity + 0.84).
  it.each(quarters.slice(0, 3))(
    "agrees with the rule of specific gravity at charge %d",
    (charge, _volts, gravity) => {
      expect(Math.abs(volts({ stateOfCharge: charge }) - 6 * (gravity + 0.84))).toBeLessThanOrEqual(0.08);
    },
  );

  it("moves by 0.024 V for every 10 °F (5.6 °C), warm higher (the same two sources)", () => {
    expect(volts({ celsius: 25 + 5.6 }) - volts({})).toBeCloseTo(0.024, 9);
    expect(volts({ celsius: 25 - 56 }) - volts({})).toBeCloseTo(-0.24, 9);
  });

  it("loses a sixth with a shorted cell", () => {
    expect(volts({ cells: 5 })).toBeCloseTo((12.7 * 5) / 6, 9);
  });
});

describe("load test", () => {
  // A battery whose resistance is what its rating of 600 A cold cranking implies.
  const total = coldCrankingOhms(600) / coldOhmsFactor(-18);
  const rated = { ohms: 0.67 * total, polarisationOhms: 0.33 * total };

  it("holds 7.2 V at its cold cranking current at −18 °C (SAE J537, from memory)", () => {
    expect(volts({ ...rated, celsius: -18 }, 600)).toBeCloseTo(7.2, 9);
  });

  // Minimum volts of a good battery at half its cold cranking current after 15 s. Source: maker's service pages (Kia Amanti
  // 2004, 2007, 2009; hyundaibook.ru). The operating point has the polarisation settled: a little less than after 15 s.
  const minima = [
    [20, 9.6],
    [16, 9.5],
    [10, 9.4],
    [4, 9.3],
    [-1, 9.1],
    [-7, 8.9],
    [-12, 8.7],
    [-18, 8.5],
  ] as const;
  it.each(minima)("a good battery stays above the minimum at %d °C, %d V", (celsius, least) => {
    expect(volts({ ...rated, celsius }, 300)).toBeGreaterThan(least);
    expect(volts({ ...rated, celsius, resistanceScale: 3 }, 300)).toBeLessThan(least);
  });

  // Computed: (12.65 − 9.6)/300 A; 4 to 6 mΩ for a good 60 Ah battery at 25 °C from memory.
  it("implies no more than 10.2 mΩ, and 4 to 6 mΩ when warm", () => {
    const ohms = (volts(rated) - volts(rated, 300)) / 300;
    expect(ohms).toBeLessThanOrEqual(0.0102);
    for (const numbers of [rated, {}]) {
      const slope = (volts(numbers) - volts(numbers, 100)) / 100;
      expect(slope).toBeGreaterThanOrEqual(4e-3);
      expect(slope).toBeLessThanOrEqual(6e-3);
    }
  });

  it("is weaker the emptier and the colder it is", () => {
    const drop = (numbers: Partial<Battery>) => volts(numbers) - volts(numbers, 100);
    const charges = [1, 0.75, 0.5, 0.25, 0].map((stateOfCharge) => drop({ stateOfCharge }));
    const colds = [40, 20, 0, -20].map((celsius) => drop({ celsius }));
    for (const drops of [charges, colds]) {
      for (let i = 1; i < drops.length; i++) expect(drops[i]!).toBeGreaterThan(drops[i - 1]!);
    }
  });
});

describe("charging", () => {
  // Common practice, no source: a full battery takes a few amps at 14.4 V, a half empty one tens of amps.
  it("takes a few amps when full and tens when half empty", () => {
    expect(chargingAmps({}, 14.4)).toBeGreaterThan(2);
    expect(chargingAmps({}, 14.4)).toBeLessThan(8);
    expect(chargingAmps({ stateOfCharge: 0.5 }, 14.4)).toBeGreaterThan(20);
    expect(chargingAmps({ stateOfCharge: 0.5 }, 14.4)).toBeLessThan(50);
  });

  it("passes from discharge to charge without a step", () => {
    const currents = Array.from({ length: 81 }, (_, k) => chargingAmps({}, 12.5 + k * 5e-3));
    for (let i = 1; i < currents.length; i++) {
      expect(currents[i]!).toBeGreaterThan(currents[i - 1]!);
    }
    expect(chargingAmps({}, 12.7)).toBeCloseTo(0, 9);
  });
});
