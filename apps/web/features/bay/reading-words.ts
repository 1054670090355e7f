import type { Prediction } from "@probeworthy/evaluation";
import type { MeterFunction, Reading } from "@probeworthy/instruments";

export const functionTitles: Readonly<Record<MeterFunction, string>> = {
  volts: "Volts DC",
  ohms: "Ohms",
  continuity: "Continuity",
  amps: "Amps, 10 A input",
};

export const functionSigns: Readonly<Record<MeterFunction, string>> = {
  volts: "V",
  ohms: "Ω",
  continuity: "Ω tone",
  amps: "A",
};

const minus = "\u2212";

/** `+12.63`, `−0.004`, `OL`, `– – –`: always signed where the sign means something (volts and amps). */
export function formatDisplay(reading: Reading): string {
  if (reading.state === "overload") return "OL";
  if (reading.state === "fuse_open" || reading.state === "lead_open") return "– – –";
  if (reading.display.startsWith("-")) return `${minus}${reading.display.slice(1)}`;
  const signed = reading.function === "volts" || reading.function === "amps";
  return signed && reading.value !== 0 ? `+${reading.display}` : reading.display;
}

/** Figure and unit on one line, for the log. */
export function formatReading(reading: Reading): string {
  const figure = formatDisplay(reading);
  const tone = reading.function === "continuity" ? (reading.sounds ? ", tone" : ", no tone") : "";
  if (reading.state === "fuse_open") return "no figure: the meter's fuse is open";
  if (reading.state === "lead_open") return "no figure: a lead is in the air";
  return reading.state === "overload" ? `OL${tone}` : `${figure} ${reading.unit}${tone}`;
}

const spokenUnits: Readonly<Record<Reading["unit"], string>> = {
  V: "volts",
  mV: "millivolts",
  Ω: "ohms",
  kΩ: "kilohms",
  MΩ: "megohms",
  A: "amps",
  mA: "milliamps",
};

/** The reading as it would be called across the shop. */
export function speakReading(reading: Reading): string {
  if (reading.state === "fuse_open") return "No figure. The meter's fuse is open.";
  if (reading.state === "lead_open") return "No figure. A lead is in the air.";
  const tone = reading.function === "continuity" ? (reading.sounds ? " Tone." : " No tone.") : "";
  if (reading.state === "overload") return `Overload, no figure.${tone}`;
  const figure = reading.display.replace(/^-/, "minus ");
  return `${figure} ${spokenUnits[reading.unit]}.${tone}`;
}

/** What follows from the state of the display, in words; nothing for an ordinary figure. */
export function explainState(reading: Reading): string | undefined {
  if (reading.state === "overload") {
    return reading.function === "ohms" || reading.function === "continuity"
      ? "OL: more resistance than the meter can show, or no path at all."
      : "OL: more than the range can show.";
  }
  if (reading.state === "fuse_open")
    return "The fuse of the 10 A input is open. Replace it to measure current again.";
  if (reading.state === "lead_open") return "One lead touches nothing.";
  return undefined;
}

const multipliers: Readonly<Record<string, number>> = { "": 1, m: 1e-3, k: 1e3, K: 1e3, M: 1e6 };
const predictionPattern = /^([+\-\u2212]?\d*[.,]?\d+)\s*([mkKM]?)\s*(?:V|A|Ω|ohms?|volts?|amps?)?$/i;

export type ParsedPrediction =
  | { readonly ok: true; readonly value: Prediction | undefined }
  | { readonly ok: false; readonly error: { readonly code: "not_a_figure"; readonly message: string } };

/** `12.4`, `12,4 V`, `2.2k`, `OL`; empty text is no prediction. */
export function parsePrediction(text: string): ParsedPrediction {
  const trimmed = text.trim();
  if (trimmed === "") return { ok: true, value: undefined };
  if (/^(ol|overload|open)$/i.test(trimmed)) return { ok: true, value: { kind: "overload" } };
  const match = predictionPattern.exec(trimmed);
  const figure = Number((match?.[1] ?? "").replace(",", ".").replace(minus, "-"));
  if (match === null || !Number.isFinite(figure)) {
    return {
      ok: false,
      error: { code: "not_a_figure", message: "Write a figure such as 12.4, 0.2 or 2.2k, or OL." },
    };
  }
  return { ok: true, value: { kind: "figure", value: figure * (multipliers[match[2] ?? ""] ?? 1) } };
}

const baseUnit: Readonly<Record<MeterFunction, string>> = {
  volts: "V",
  ohms: "Ω",
  continuity: "Ω",
  amps: "A",
};

export function formatPrediction(prediction: Prediction, meterFunction: MeterFunction): string {
  if (prediction.kind === "overload") return "OL";
  const text = String(prediction.value).replace("-", minus);
  return `${text} ${baseUnit[meterFunction]}`;
}
