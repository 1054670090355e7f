import type { Reading } from "@probeworthy/instruments";
import { describe, expect, it } from "vitest";
import { liveDataAgrees, readingAgrees, tolerance } from "./agreement";

const volts = (value: number): Reading => ({
  function: "volts",
  display: value.toFixed(2),
  unit: "V",
  value,
  state: "value",
  resolution: 0.01,
  range: "60 V",
  sounds: false,
});
const ohms = (value: number | null): Reading => ({
  ...volts(value ?? 0),
  function: "ohms",
  value,
  unit: "Ω",
  state: value === null ? "overload" : "value",
  resolution: 0.1,
  range: "600 Ω",
});

describe("does a reading fit a candidate", () => {
  it("holds the meter's own ±(0.5 % + 2 counts) within the tolerance", () => {
    // ±(0.5 % + 2) at 12.34 V on 0.01 V is 0.0817 V, computed from the meter's rating.
    expect(tolerance(volts(12.34))).toBeGreaterThan(0.0817);
  });

  it("takes a difference of a tenth of a volt at a battery for none, and of a volt for one", () => {
    expect(readingAgrees(volts(12.6), [volts(12.5)])).toBe(true);
    expect(readingAgrees(volts(12.6), [volts(11.6)])).toBe(false);
  });

  it("takes figures between both ends of a stretch of severities", () => {
    expect(readingAgrees(volts(9), [volts(12.6), volts(3)])).toBe(true);
    expect(readingAgrees(volts(1), [volts(12.6), volts(3)])).toBe(false);
  });

  it("minds the sign", () => {
    expect(readingAgrees(volts(-5), [volts(5)])).toBe(false);
  });

  it("takes OL for more than any figure", () => {
    expect(readingAgrees(ohms(null), [ohms(120)])).toBe(false);
    expect(readingAgrees(ohms(120), [ohms(null)])).toBe(false);
    expect(readingAgrees(ohms(null), [ohms(null)])).toBe(true);
    expect(readingAgrees(ohms(300), [ohms(60), ohms(null)])).toBe(true);
  });

  it("draws nothing from a meter with an open fuse", () => {
    const dead: Reading = { ...volts(0), function: "amps", state: "fuse_open", value: null };
    expect(readingAgrees(dead, [{ ...volts(5), function: "amps" }])).toBe(true);
  });
});

describe("live data", () => {
  const answer = (value: number, text: string, answered = true) => ({
    kind: "liveData" as const,
    module: "A1",
    answered,
    message: "",
    values: answered ? [{ name: "torque", title: "Torque", unit: "N·m", text, value }] : [],
    context: { conditions: {}, unplugged: [], pulledFuses: [] },
  });
  it("is looser than the meter: 5 % and three last digits", () => {
    expect(liveDataAgrees(answer(10, "10.0"), [answer(10.7, "10.7")])).toBe(true);
    expect(liveDataAgrees(answer(10, "10.0"), [answer(11, "11.0")])).toBe(false);
  });
  it("tells an answer from silence", () => {
    expect(liveDataAgrees(answer(10, "10.0"), [answer(0, "", false)])).toBe(false);
  });
});
