import {
  type CircuitElement,
  fitSteinhartHart,
  operatingPoint,
  platinumOhms,
  type SteinhartHart,
  steinhartHartCelsius,
  type Thermistor,
  type ThermistorPoint,
} from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

type Law = Pick<Thermistor, "steinhartHart"> | Pick<Thermistor, "table"> | Pick<Thermistor, "platinumOhms">;

/** Volts of a sensor behind a pull-up at 5 V. */
function signal(law: Law, celsius: number, pullUp: number): number {
  const elements: CircuitElement[] = [
    { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts: 5 },
    { kind: "resistor", id: "pull", a: "a", b: "s", ohms: pullUp },
    { kind: "thermistor", id: "b", a: "s", b: "0", celsius, ...law },
  ];
  const result = operatingPoint({ ground: "0", elements });
  if (!result.ok) throw new Error(result.error.message);
  return result.value.volts("s");
}

/** Ohms of the element, measured in a network. */
const ohmsOf = (law: Law, celsius: number): number => {
  const volts = signal(law, celsius, 1e3);
  return (1e3 * volts) / (5 - volts);
};

function fit(first: ThermistorPoint, second: ThermistorPoint, third: ThermistorPoint): SteinhartHart {
  const result = fitSteinhartHart([first, second, third]);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

// Coolant sensor, published nominal table: lemon-manuals.la/Jeep/2020/Compass…/1.4L,_2.4L/Operation
const coolant: readonly ThermistorPoint[] = [
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
];

describe("coolant sensor, from three of its twenty points", () => {
  const law = fit([-40, 48805], [25, 2044], [140, 66.2]);

  it("has the constants that another program finds", () => {
    // Computed with other software from the same three points.
    expect(law.a / 1.33619934e-3).toBeCloseTo(1, 8);
    expect(law.b / 2.55949169e-4).toBeCloseTo(1, 8);
    expect(law.c / 1.50824873e-7).toBeCloseTo(1, 7);
  });

  it.each(coolant)("at %d °C has its %d Ω within 0.02 °C", (celsius, ohms) => {
    expect(Math.abs(steinhartHartCelsius(law, ohms) - celsius)).toBeLessThan(0.02);
    // The same in a network, by the element's own resistance.
    const measured = ohmsOf({ steinhartHart: law }, celsius);
    expect(Math.abs(steinhartHartCelsius(law, measured) - celsius)).toBeLessThan(1e-6);
    expect(Math.abs(steinhartHartCelsius(law, measured) - steinhartHartCelsius(law, ohms))).toBeLessThan(
      0.02,
    );
  });

  it.each(coolant)("at %d °C a table of those three points says the same", (celsius) => {
    const table = coolant.filter(([at]) => [-40, 25, 140].includes(at));
    expect(ohmsOf({ table }, celsius) / ohmsOf({ steinhartHart: law }, celsius)).toBeCloseTo(1, 8);
  });

  it("is not a beta law: two points miss the ends by degrees", () => {
    const table = coolant.filter(([at]) => [25, 100].includes(at));
    // The temperature at which the two-point law has the printed resistance.
    const missed = (celsius: number): number => {
      const printed = coolant.find(([at]) => at === celsius)?.[1] ?? Number.NaN;
      let [low, high] = [celsius - 10, celsius + 10];
      while (high - low > 1e-9) {
        const middle = (low + high) / 2;
        if (ohmsOf({ table }, middle) > printed) low = middle;
        else high = middle;
      }
      return low - celsius;
    };
    // Computed with other software from β = 3640 K.
    expect(missed(-40)).toBeCloseTo(3.5, 1);
    expect(missed(140)).toBeCloseTo(1.5, 1);
    expect(Math.abs(missed(60))).toBeGreaterThan(0.02);
  });

  it("goes through every other row of the table within 0.05 °C when ten rows are given", () => {
    const table = coolant.filter((_, i) => i % 2 === 0 || i === coolant.length - 1);
    for (const [celsius, ohms] of coolant) {
      const slope =
        (Math.log(ohmsOf({ table }, celsius + 0.5)) - Math.log(ohmsOf({ table }, celsius - 0.5))) / 1;
      const kelvin = Math.log(ohmsOf({ table }, celsius) / ohms) / slope;
      expect(Math.abs(kelvin)).toBeLessThan(0.05);
    }
  });
});

describe("sensor through a pull-up of 1 kΩ", () => {
  // Source: saabwisonline.com, coolant temperature sensor 202, printed band of ohms (here its middle) and printed volts.
  const rows = [
    [-30, 25e3, 4.8, 1],
    [-10, 9.2e3, 4.5, 1],
    [20, 2.5e3, 3.6, 1],
    [40, 1.15e3, 2.7, 1],
    [60, 617.5, 1.9, 1],
    [80, 330, 1.2, 1],
    [90, 250, 1, 1],
    [110, 150, 0.65, 2],
  ] as const;
  const table = rows.map(([celsius, ohms]) => [celsius, ohms] as const);

  it.each(rows)("at %d °C gives the printed volts", (celsius, _ohms, volts, digits) => {
    expect(signal({ table }, celsius, 1e3).toFixed(digits)).toBe(volts.toFixed(digits));
  });

  it("falls steadily between and beyond the printed rows", () => {
    let last = 5;
    for (let celsius = -60; celsius <= 160; celsius += 0.5) {
      const volts = signal({ table }, celsius, 1e3);
      expect(volts).toBeLessThan(last);
      last = volts;
    }
  });
});

describe("other thermistors", () => {
  it("finds the constants of the worked example 25, 10 and 4 kΩ at 5, 25 and 45 °C", () => {
    // The points are those of a widely used calculator (from memory); the constants computed with other software.
    const law = fit([5, 25e3], [25, 10e3], [45, 4e3]);
    expect(law.a / 2.108508e-3).toBeCloseTo(1, 6);
    expect(law.b / 7.979205e-5).toBeCloseTo(1, 6);
    expect(law.c / 6.535076e-7).toBeCloseTo(1, 6);
  });

  // ILX/LDT appendix table A.1, https://manualsdump.com/…/ldt-5525/138826/41, which promises better than 0.01 °C.
  it.each([
    [10, 19549],
    [20, 12262],
    [30, 7908],
  ])("laser diode sensor at %d °C, %d Ω", (celsius, ohms) => {
    const law = fit([0, 32128], [25, 9814], [50, 3542]);
    expect(Math.abs(steinhartHartCelsius(law, ohms) - celsius)).toBeLessThan(0.01);
  });

  it.each([
    // 100 °C from the constants of IEC 60751 as several drivers cite them; the other rows of its table from memory.
    [-200, 18.52],
    [-100, 60.256],
    [0, 100],
    [100, 138.5055],
    [200, 175.856],
    [400, 247.092],
    [850, 390.481],
  ])("platinum sensor at %d °C has %d Ω", (celsius, ohms) => {
    const digits = (String(ohms).split(".")[1] ?? "").length;
    expect(platinumOhms(celsius).toFixed(digits)).toBe(ohms.toFixed(digits));
    expect(ohmsOf({ platinumOhms: 200 }, celsius) / (2 * ohms)).toBeCloseTo(1, 4);
  });

  it("follows a rising table and holds an open-ended one within 1 µΩ and 1e12 Ω", () => {
    // Silicon sensor of 1 kΩ at 25 °C, KTY 81-110 (from memory).
    const table = [
      [-50, 515],
      [0, 815],
      [25, 1000],
      [50, 1209],
      [100, 1696],
      [150, 2211],
    ] as const;
    for (const [celsius, ohms] of table) expect(ohmsOf({ table }, celsius) / ohms).toBeCloseTo(1, 8);
    expect(ohmsOf({ table }, 75)).toBeGreaterThan(1400);
    expect(ohmsOf({ table }, 75)).toBeLessThan(1480);
    expect(ohmsOf({ table }, -273)).toBeGreaterThan(0);
    // So much that 5 V stand at the sensor to the last digit.
    expect(signal({ table: coolant }, -273, 1e3)).toBeCloseTo(5, 7);
  });
});
