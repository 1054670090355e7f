import { ok } from "@probeworthy/vehicle";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readAmps } from "./amps";
import { autorange, showOnRange } from "./display";
import { voltRanges } from "./meter";
import type { MeterCircuit } from "./meter-circuit";
import { readContinuity, readOhms } from "./ohms";
import { readVolts } from "./volts";

/** A source behind a resistance, solved by Millman's theorem: the closed form of everything linear. */
const source =
  (volts: number, ohms: number): MeterCircuit =>
  (load) =>
    ok(load === null ? volts : (volts / ohms + load.amps) / (1 / ohms + 1 / load.ohms));

const volts = (circuit: MeterCircuit) => {
  const reading = readVolts(circuit);
  if (!reading.ok) throw new Error("no reading");
  return reading.value;
};
const ohms = (circuit: MeterCircuit) => {
  const reading = readOhms(circuit);
  if (!reading.ok) throw new Error("no reading");
  return reading.value;
};

describe("the display", () => {
  it.each([
    // A 6000-count display ends at 5.999 and goes on with 6.00.
    [5.999, "5.999", "6 V"],
    [5.9994, "5.999", "6 V"],
    [5.9995, "6.00", "60 V"],
    [6, "6.00", "60 V"],
    [12.634, "12.63", "60 V"],
    [12.635, "12.64", "60 V"], // halves away from zero
    [-12.635, "-12.64", "60 V"],
    [0.5999, "599.9", "600 mV"],
    [0.59995, "0.600", "6 V"],
    [-0.0004, "-0.4", "600 mV"],
    [0.00004, "0.0", "600 mV"],
    [-0.00004, "0.0", "600 mV"], // no minus zero
    [599.94, "599.9", "600 V"],
    [600, "OL", "600 V"],
  ])("shows %f V as %s on %s", (value, display, range) => {
    const reading = autorange("volts", value, voltRanges);
    expect([reading.display, reading.range]).toEqual([display, range]);
  });

  it("gives the value as displayed, in the base unit", () => {
    expect(autorange("volts", 0.12345, voltRanges)).toMatchObject({
      value: 0.1235,
      unit: "mV",
      resolution: 0.0001,
    });
  });

  it("does not let the last bits of a solution choose the figure of a tie", () => {
    for (const dust of [-1e-13, 0, 1e-13]) {
      expect(autorange("volts", 2.5005 * (1 + dust), voltRanges).display).toBe("2.501");
    }
  });

  it("is odd: swapping the leads changes the sign and nothing else", () => {
    fc.assert(
      fc.property(fc.double({ min: -700, max: 700, noNaN: true }), (value) => {
        const there = autorange("volts", value, voltRanges);
        const back = autorange("volts", -value, voltRanges);
        expect(back.range).toBe(there.range);
        expect(back.value ?? 0).toBe(there.value === null || there.value === 0 ? 0 : -there.value);
      }),
    );
  });

  it("is never further from the truth than half a count", () => {
    fc.assert(
      fc.property(fc.double({ min: -599, max: 599, noNaN: true }), (value) => {
        const reading = autorange("volts", value, voltRanges);
        expect(Math.abs((reading.value ?? Number.NaN) - value)).toBeLessThanOrEqual(
          reading.resolution / 2 + 1e-9 * Math.abs(value),
        );
      }),
    );
  });

  it("overflows for what is not finite", () => {
    expect(showOnRange("ohms", Number.POSITIVE_INFINITY, voltRanges[0]).display).toBe("OL");
  });
});

describe("volts through 10 MΩ", () => {
  it("shows 3.19 V behind a leaking fuse", () => {
    // 12.75 V through about 30 MΩ; a builder's forum post (vansairforce.com, showpost 1182954) gives source and leak;
    // 12.75 · 10 / (30 + 10) = 3.1875 V.
    expect(volts(source(12.75, 30e6)).display).toBe("3.188");
  });

  it("loads a high-resistance divider as the correction formula says", () => {
    // V_true = V_read · (1 + R1·R2 / (R_V·(R1 + R2))): source: sites.google.com/view/instrumentation-measurement, 2-5.
    // The 12 V, 150 kΩ + 150 kΩ question of tutorsglobe.com 5590186, with this meter's 10 MΩ: 5.955 V.
    const reading = volts(source(6, 75e3));
    expect(reading.display).toBe("5.955");
    expect((reading.value ?? 0) * (1 + 75e3 / 10e6)).toBeCloseTo(6, 3);
  });

  it("does not show the load on a stiff source", () => {
    // 6 V over 1 kΩ and 2 kΩ reads 3.997 V on a 1 MΩ meter (source: authorea.com/users/88807/articles/127673);
    // ten times the input resistance leaves a tenth of the error: 3.9997 V.
    expect(volts(source(4, 1000 / 1.5)).display).toBe("4.000");
  });
});

describe("ohms", () => {
  it.each([
    [60, "60.2", "600 Ω"], // the leads are in it
    [0.001, "0.2", "600 Ω"],
    [120, "120.2", "600 Ω"],
    [2044, "2.044", "6 kΩ"],
    [10e3, "10.00", "60 kΩ"],
    [150e3, "150.0", "600 kΩ"],
    [1e6, "1.000", "6 MΩ"],
    [30e6, "30.00", "60 MΩ"],
    [70e6, "OL", "60 MΩ"],
    [1e12, "OL", "60 MΩ"],
  ])("shows %d Ω as %s on %s", (value, display, range) => {
    const reading = ohms(source(0, value));
    expect([reading.display, reading.range]).toEqual([display, range]);
  });

  it("reads nonsense where a voltage is left, and other nonsense with the leads swapped", () => {
    // 50 mV left over a 0.1 Ω ground lead: a good lead looks like a bad one.
    expect(ohms(source(0.05, 0.1)).value).toBeGreaterThan(100);
    expect(ohms(source(-0.05, 0.1)).value).toBeLessThan(-50);
    expect(ohms(source(12.6, 1)).display).toBe("OL");
  });

  it("does not turn a silicon junction on", () => {
    // Published open-circuit voltages on ohms: ≤ 0.45 V (RS IDM-71, AXIO AX-105 manuals). Ideal junction, Is 1e-14 A.
    const junction: MeterCircuit = (load) => {
      if (load === null) return ok(0);
      let [low, high] = [0, 0.8];
      for (let step = 0; step < 200; step++) {
        const middle = (low + high) / 2;
        const surplus = load.amps - middle / load.ohms - 1e-14 * Math.expm1(middle / 0.025865);
        if (surplus > 0) low = middle;
        else high = middle;
      }
      return ok(low);
    };
    const reading = ohms(junction);
    expect(reading.value ?? Number.POSITIVE_INFINITY).toBeGreaterThan(1e6);
    const tone = readContinuity(junction);
    expect(tone.ok && tone.value.sounds).toBe(false);
  });

  it("holds a range when told to", () => {
    const held = readOhms(source(0, 2044), "600 Ω");
    expect(held.ok && held.value.display).toBe("OL");
  });
});

describe("continuity", () => {
  it.each([
    [0.5, true],
    [29, true],
    [31, false],
    [1e9, false],
  ])("with %d Ω sounds: %s", (value, sounds) => {
    const reading = readContinuity(source(0, value));
    expect(reading.ok && reading.value.sounds).toBe(sounds);
  });
});

describe("amps", () => {
  const amps = (circuit: MeterCircuit, open: number, fuse: "good" | "open" = "good") => {
    const reading = readAmps(circuit, fuse, open);
    if (!reading.ok) throw new Error("no reading");
    return reading.value;
  };

  it("counts its own resistance in", () => {
    // 12 V through 3.83 Ω + 0.17 Ω of meter and leads.
    expect(amps(source(12, 3.83), 12).reading).toMatchObject({ display: "3.000", value: 3, range: "6 A" });
    expect(amps(source(12, 1.03), 12).reading).toMatchObject({ display: "10.00", range: "10 A" });
    expect(amps(source(-12, 3.83), -12).reading.display).toBe("-3.000");
  });

  it("loses its fuse across a battery", () => {
    expect(amps(source(12.6, 0.005), 12.6)).toMatchObject({ blowsMeterFuse: true, acrossSupply: true });
  });

  it("loses its fuse in a circuit that takes more than it carries, which is another mistake", () => {
    expect(amps(source(12.6, 0.4), 12.6)).toMatchObject({ blowsMeterFuse: true, acrossSupply: false });
  });

  it("shows a zero that means nothing while its fuse is open", () => {
    expect(amps(source(12, 4), 12, "open").reading).toMatchObject({
      display: "0.00",
      value: null,
      state: "fuse_open",
    });
  });
});
