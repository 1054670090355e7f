import { type CircuitElement, copperCoefficient, ohmsAt, operatingPoint } from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

// Copper as resistors of a network, against printed figures. Of the two laws in print for the temperature the engine takes
// α = 0.00393 /K at 20 °C (IACS copper, from memory) unless another coefficient is given.

/** Volts over a conductor of so many ohms at 20 °C that carries `amps`, at a temperature. */
function drop(ohms: number, amps: number, more: object = {}): number {
  const elements: CircuitElement[] = [
    { kind: "currentSource", id: "i", from: "0", to: "a", amps },
    { kind: "resistor", id: "w", a: "a", b: "0", ohms, ...more },
  ];
  const result = operatingPoint({ ground: "0", elements });
  if (!result.ok) throw new Error(result.error.message);
  return result.value.volts("a");
}

describe("copper", () => {
  it.each([
    // Maximum resistance by DIN ISO 6722-3 as quoted at http://www.t3-pedia.de/index.php?oldid=3089&title=Autoelektrik_Grundlagen;
    // the products are ours.
    ["3 m of 1.5 mm² at 8 A", 12.7e-3 * 3, 8, 0.3048],
    ["2 m of 25 mm² at 200 A", 0.743e-3 * 2, 200, 0.2972],
    // Solid AWG 18, 6.385 Ω per 1000 ft: http://hyperphysics.phy-astr.gsu.edu/hbase/tables/wirega.html
    ["10 ft of AWG 18 at 1 A", (6.385 / 1000) * 10, 1, 0.06385],
  ])("%s drops what it should", (_what, ohms, amps, volts) => {
    expect(drop(ohms, amps)).toBeCloseTo(volts, 9);
  });

  it("has 46.58 mΩ/m at 85 °C where it has 37.1 at 20 °C", () => {
    // 37.1 mΩ/m for 0.5 mm²: DIN ISO 6722-3 as above; the factor 1.25545 is ours.
    const warm = drop(37.1e-3, 1, { celsius: 85, temperatureCoefficient: copperCoefficient });
    expect(warm * 1e3).toBeCloseTo(46.58, 2);
    expect(warm / 37.1e-3).toBeCloseTo(1.25545, 9);
  });

  // Factor back to 20 °C in IEC 60228: https://www.uecables.com/471-power-copper-conductors-according-to-iec-60228.html
  it.each([
    [5, 1.064],
    [10, 1.042],
    [20, 1],
    [25, 0.98],
    [40, 0.926],
    [60, 0.862],
    [80, 0.806],
    [100, 0.758],
  ])("at %d °C comes back to 20 °C by the printed factor %d", (celsius, factor) => {
    // The table is computed with 0.004 /K: to its last digit with that, within 0.5 % with 0.00393.
    const printed = 1 / drop(1, 1, { celsius, temperatureCoefficient: 0.004 });
    expect(Math.abs(printed - factor)).toBeLessThanOrEqual(0.0005 + 1e-9);
    const usual = 1 / drop(1, 1, { celsius, temperatureCoefficient: copperCoefficient });
    expect(Math.abs(usual / factor - 1)).toBeLessThan(0.005);
  });

  // Solid wire, Ω per 1000 ft at 20 °C (page as above); ρ₂₀ 17.241 Ω·mm²/km (tnlab.org, IEC 60228); diameter by ASTM B258,
  // from memory. Warmed to 50 °C and measured back.
  it.each([
    [4, 0.2485],
    [10, 0.9989],
    [14, 2.525],
    [18, 6.385],
    [20, 10.15],
    [24, 25.67],
    [30, 103.2],
  ])("AWG %d has %d Ω per 1000 ft of pure copper", (gauge, perThousandFeet) => {
    const area = (Math.PI / 4) * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2;
    const warm = drop((17.241 / area) * 0.3048, 1, {
      celsius: 50,
      temperatureCoefficient: copperCoefficient,
    });
    expect(ohmsAt(1, 50, copperCoefficient)).toBeCloseTo(1.1179, 9);
    expect(warm / 1.1179 / perThousandFeet).toBeCloseTo(1, 2.5);
  });

  it("keeps a tenth of its resistance however cold, and counts from another reference when told to", () => {
    expect(drop(2, 1, { celsius: -273, temperatureCoefficient: copperCoefficient })).toBeCloseTo(0.2, 9);
    const more = { celsius: 35, temperatureCoefficient: 0.004, referenceCelsius: 25 };
    expect(drop(2, 1, more)).toBeCloseTo(2 * 1.04, 9);
  });
});
