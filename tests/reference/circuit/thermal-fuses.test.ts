import {
  type CircuitElement,
  type Fuse,
  type FuseType,
  fuseContinuousAmps,
  fuseDerating,
  fuseOpeningSeconds,
  operatingPoint,
  transient,
} from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

// Sources: Littelfuse 297, 0997, 287, 257 and 299 data sheets as transcribed in public project notes (the 257 entry gives the
// blade windows as ISO 8820-3); DIN 72581-3 extract, http://noiasca.rothschopf.net/deutsch/dkabel_sicherung.htm

const fuse = (type: FuseType, ratedAmps: number, more: object = {}): Fuse => ({
  kind: "fuse",
  id: "f",
  a: "a",
  b: "b",
  type,
  ratedAmps,
  ...more,
});

/** A source so high, behind so much resistance, that it forces its current through anything but an open fuse. */
const forced = (amps: number): CircuitElement[] => [
  { kind: "voltageSource", id: "v", positive: "s", negative: "0", volts: amps * 1e4 },
  { kind: "resistor", id: "r", a: "s", b: "a", ohms: 1e4 },
  { kind: "resistor", id: "load", a: "b", b: "0", ohms: 1e-3 },
];

/** Moment at which the fuse opens at a constant current, by following its melting through time; undefined if it holds. */
function opensAfter(element: Fuse, amps: number, untilSeconds: number): number | undefined {
  const result = transient(
    { ground: "0", elements: [...forced(amps), element] },
    { untilSeconds, start: "rest", at: [untilSeconds] },
  );
  if (!result.ok) throw new Error(result.error.message);
  const [event, ...others] = result.value.events;
  expect(others).toEqual([]);
  if (event) expect(event).toMatchObject({ element: "f", state: 1 });
  return event?.seconds;
}

const hundredHours = 360_000;
const windows: Readonly<Record<"C" | "F" | "E", readonly (readonly [number, number, number])[]>> = {
  C: [
    [1.35, 0.75, 600],
    [1.6, 0.25, 50],
    [2, 0.15, 5],
    [3.5, 0.08, 0.5],
    [6, 0, 0.15],
  ],
  F: [
    [1.35, 0.75, 600],
    [2, 0.15, 5],
    [3.5, 0.08, 0.5],
    [6, 0.03, 0.1],
  ],
  E: [
    [1.35, 60, 1800],
    [2, 2, 50],
    [3.5, 0.2, 7],
    [6, 0.04, 1],
  ],
};
const ratings = {
  C: [1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 35, 40],
  F: [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30],
  E: [20, 30, 40, 50, 60, 70, 80, 100, 120],
} as const;
const rows = Object.entries(windows).flatMap(([type, gates]) =>
  gates.map((gate): [FuseType, number, number, number] => [type as FuseType, ...gate]),
);

describe("time until a fuse opens, followed through time", () => {
  it.each(rows)("type %s at %d times its rating opens within %d to %d s", (type, times, low, high) => {
    for (const rated of ratings[type as keyof typeof ratings]) {
      const seconds = opensAfter(fuse(type, rated), times * rated, 1.5 * high);
      expect(seconds).toBeGreaterThanOrEqual(low);
      expect(seconds).toBeLessThanOrEqual(high);
      // The law and its closed form are one; the forcing source gives a little way to the drop.
      expect((seconds ?? Number.NaN) / fuseOpeningSeconds(type, rated, times * rated)).toBeCloseTo(1, 2.5);
    }
  });

  it.each(["C", "F", "E"] as const)("type %s holds 110 %% of its rating for a hundred hours", (type) => {
    for (const rated of ratings[type]) {
      expect(opensAfter(fuse(type, rated), 1.1 * rated, hundredHours)).toBeUndefined();
      expect(fuseOpeningSeconds(type, rated, 1.1 * rated)).toBe(Number.POSITIVE_INFINITY);
    }
  });

  it("a bolted strip is taken for type E: an assumption", () => {
    for (const times of [1.35, 2, 6]) {
      expect(fuseOpeningSeconds("bolted", 100, times * 100)).toBe(fuseOpeningSeconds("E", 100, times * 100));
    }
  });

  // Typical melting integrals of the sheets, A²s. One curve serves all ratings of a type, so a factor of 2.5 is allowed; a
  // maker and a distributor differ by 14 % on one of these parts themselves.
  it.each([
    ["C", 20, 520],
    ["C", 40, 3300],
    ["F", 15, 308],
    ["F", 25, 625],
    ["E", 40, 8500],
  ] as const)("type %s of %d A melts through near its typical %d A²s", (type, rated, squareAmpSeconds) => {
    const amps = 12 * rated;
    const melting = (opensAfter(fuse(type, rated), amps, 1) ?? Number.NaN) * amps * amps;
    expect(melting / squareAmpSeconds).toBeGreaterThan(1 / 2.5);
    expect(melting / squareAmpSeconds).toBeLessThan(2.5);
  });
});

describe("drop over a fuse", () => {
  const drop = (element: Fuse, amps: number): number => {
    const result = operatingPoint({ ground: "0", elements: [...forced(amps), element] });
    if (!result.ok) throw new Error(result.error.message);
    const { value } = result;
    return (value.volts("a") - value.volts("b")) / (value.amps("f") / amps);
  };

  it.each([
    // Cold milliohms.
    ["C", 10, 7.7],
    ["C", 15, 4.8],
    ["C", 20, 3.38],
    ["C", 40, 1.44],
    ["F", 7.5, 10.85],
    ["F", 15, 4.58],
    ["E", 40, 1.4],
  ] as const)("type %s of %d A has %d mΩ cold", (type, rated, milliohms) => {
    expect((drop(fuse(type, rated), 1e-3) / 1e-3) * 1e3).toBeCloseTo(milliohms, 6);
  });

  it.each([
    ["C", 20, 98],
    ["C", 40, 96],
    ["E", 40, 75],
  ] as const)("type %s of %d A drops the printed %d mV at its rating", (type, rated, millivolts) => {
    expect(drop(fuse(type, rated), rated) * 1e3).toBeCloseTo(millivolts, 3);
  });

  it("of a large blade stays within 100 mV at its rating, 125 mV for 20 A (DIN 72581-3)", () => {
    for (const rated of ratings.E) {
      expect(drop(fuse("E", rated), rated)).toBeLessThanOrEqual(rated === 20 ? 0.125 : 0.1);
    }
  });

  it.each([
    // Charts that technicians read leakage from: https://www.mvwautotechniek.nl/en/voltage-drop-over-fuses (10 A) and
    // https://www.nxtbook.com/nxtbooks/macs/servicereports_2017/index.php?startid=JUN6 (15 A).
    ["C", 10, 1, 130],
    ["F", 15, 0.1, 22],
    ["F", 15, 1, 218],
  ] as const)("type %s of %d A: %d mV means %d mA", (type, rated, millivolts, milliamps) => {
    const volts = drop(fuse(type, rated), milliamps / 1e3);
    expect(volts * 1e3).toBeCloseTo(millivolts, 2);
  });

  it("rises faster than the current, as the printed cold ohms and hot drops do", () => {
    // 20 A medium blade: 67.6 mV by its cold resistance, 98 mV printed.
    expect(drop(fuse("C", 20), 20) / drop(fuse("C", 20), 0.02) / 1000).toBeCloseTo(98 / 67.6, 3);
  });
});

describe("a fuse in a hot place", () => {
  it.each([
    ["E", 40, 20, 40],
    ["E", 40, 65, 34],
    ["E", 40, 85, 30],
    ["E", 40, 110, 25],
    ["E", 40, 125, 22],
    ["F", 15, 20, 13],
    ["F", 15, 100, 9],
    ["F", 5, 40, 4],
    ["F", 7.5, 40, 6],
  ] as const)("type %s of %d A is good for %d °C at %d A", (type, rated, celsius, amps) => {
    expect(fuseContinuousAmps(type, rated, celsius)).toBeCloseTo(amps, 9);
  });

  it("opens as one of a lower rating would", () => {
    const element = fuse("E", 40, { ambientCelsius: 85 });
    expect(fuseDerating("E", 85)).toBeCloseTo(0.75, 12);
    const hot = opensAfter(element, 60, 100);
    expect((hot ?? Number.NaN) / fuseOpeningSeconds("E", 30, 60)).toBeCloseTo(1, 2.5);
    expect(fuseOpeningSeconds("E", 40, 60)).toBeGreaterThan(3 * (hot ?? Number.NaN));
    expect(fuseOpeningSeconds("E", 40, 60, 85)).toBeCloseTo(fuseOpeningSeconds("E", 30, 60), 9);
  });
});

describe("a fuse among other parts", () => {
  it("of too small a rating opens under a load that the right one carries", () => {
    // A tyre inflator of 9 A on a socket: common practice, no source.
    expect(opensAfter(fuse("C", 5), 9, 600)).toBeLessThan(60);
    expect(opensAfter(fuse("C", 15), 9, hundredHours)).toBeUndefined();
  });

  it("once blown leaves the volts in front of it and nothing behind", () => {
    const elements: CircuitElement[] = [
      { kind: "voltageSource", id: "g", positive: "a", negative: "0", volts: 12.6, ohms: 0.01 },
      fuse("C", 10, { isBlown: true }),
      { kind: "filament", id: "e", a: "b", b: "0", ratedVolts: 12, ratedWatts: 21 },
    ];
    const result = operatingPoint({ ground: "0", elements });
    if (!result.ok) throw new Error(result.error.message);
    expect(result.value.volts("a")).toBeCloseTo(12.6, 9);
    expect(result.value.volts("b")).toBeLessThan(1e-9);
    expect(result.value.quantity("f", "isBlown")).toBe(1);
  });

  it("with a leak of 30 MΩ shows 1.82 V to a meter of 5 MΩ", () => {
    // Ohm's law: 12.75 V · 5/35.
    const elements: CircuitElement[] = [
      { kind: "voltageSource", id: "g", positive: "a", negative: "0", volts: 12.75 },
      fuse("C", 10, { isBlown: true, openOhms: 30e6 }),
      { kind: "resistor", id: "meter", a: "b", b: "0", ohms: 5e6 },
    ];
    const result = operatingPoint({ ground: "0", elements });
    if (!result.ok) throw new Error(result.error.message);
    expect(result.value.volts("b")).toBeCloseTo((12.75 * 5) / 35, 6);
  });
});
