import type { Reading } from "@probeworthy/instruments";
import { expect, test } from "vitest";
import { formatDisplay, parsePrediction } from "./reading-words";

const reading = (part: Partial<Reading>): Reading => ({
  function: "volts",
  display: "12.63",
  unit: "V",
  value: 12.63,
  state: "value",
  resolution: 0.01,
  range: "60 V",
  sounds: false,
  ...part,
});

test("volts and amps are always signed, ohms never, zero not at all", () => {
  expect(formatDisplay(reading({}))).toBe("+12.63");
  expect(formatDisplay(reading({ display: "-0.004", value: -0.004 }))).toBe("\u22120.004");
  expect(formatDisplay(reading({ display: "0.0", value: 0 }))).toBe("0.0");
  expect(formatDisplay(reading({ function: "ohms", display: "47.1", unit: "Ω", value: 47.1 }))).toBe("47.1");
  expect(formatDisplay(reading({ state: "overload", value: null, display: "OL" }))).toBe("OL");
});

test.each([
  ["12.4", 12.4],
  ["12,4 V", 12.4],
  ["\u22120.2", -0.2],
  ["2.2k", 2200],
  ["350 mV", 0.35],
  ["1M", 1e6],
])("a prediction written as %s is %s in the base unit", (text, value) => {
  const parsed = parsePrediction(text);
  if (!parsed.ok || parsed.value?.kind !== "figure") throw new Error(`not a figure: ${text}`);
  expect(parsed.value.value).toBeCloseTo(value, 9);
});

test("nothing is no prediction, OL is one, words are refused", () => {
  expect(parsePrediction("  ")).toEqual({ ok: true, value: undefined });
  expect(parsePrediction("ol")).toEqual({ ok: true, value: { kind: "overload" } });
  expect(parsePrediction("about twelve").ok).toBe(false);
});
