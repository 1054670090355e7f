import type { Reading } from "@probeworthy/instruments";
import type { Observation } from "../event";

type Of<K extends Observation["kind"]> = Extract<Observation, { kind: K }>;

/**
 * How far a reading may lie from what a candidate predicts before the candidate is ruled out, in the base unit:
 * the meter's ±(0.5 % + 2 counts), and what differs between two cars of the same kind (parts, temperature, battery).
 * Our own figures for the second part, on the generous side: a cause must not fall to a hair.
 */
export function tolerance(reading: Reading): number {
  const value = Math.abs(reading.value ?? 0);
  const meter = 0.005 * value + 2 * reading.resolution;
  switch (reading.function) {
    case "volts":
      return meter + 0.015 * value + 0.003;
    case "amps":
      return meter + 0.05 * value + 0.01;
    case "ohms":
    case "continuity":
      return meter + 0.05 * value + 0.2;
  }
}

/** Share of a range beyond which `OL` and a figure near the end of the range may be the same thing. */
const nearEnd = 0.9;
const topOhms = 60e6;

/** Would a car that gives `predicted` (one or both ends of a stretch of severities) have shown the logged reading? */
export function readingAgrees(logged: Reading, predicted: readonly Reading[]): boolean {
  if (logged.state === "fuse_open" || logged.state === "lead_open") return true; // says nothing of the car
  if (logged.function === "continuity") {
    if (predicted.some((reading) => reading.sounds === logged.sounds)) return true;
  }
  const values = predicted.map((reading) => ohmsOrValue(reading));
  const [low, high] = [Math.min(...values), Math.max(...values)];
  if (logged.value === null) return high >= nearEnd * (logged.function === "continuity" ? 600 : topOhms);
  const margin = tolerance(logged);
  return logged.value >= low - margin && logged.value <= high + margin;
}

/** A figure to compare: `OL` counts as more than any figure of its function. */
const ohmsOrValue = (reading: Reading): number =>
  reading.value ?? (reading.state === "overload" ? Number.POSITIVE_INFINITY : 0);

/** Lamps, feel, sound: the same words. */
export function noticedAgrees(
  logged: readonly { readonly id: string; readonly text: string }[],
  predicted: readonly { readonly id: string; readonly text: string }[],
): boolean {
  return logged.every((item) => predicted.find(({ id }) => id === item.id)?.text === item.text);
}

/** The same set of codes; how often and how long each has been there may differ. */
export function codesAgree(logged: Of<"codes">, predicted: Of<"codes">): boolean {
  if (logged.answered !== predicted.answered) return false;
  const set = (codes: Of<"codes">) =>
    codes.codes
      .map(({ code }) => code)
      .sort()
      .join();
  return set(logged) === set(predicted);
}

/** Live data within 5 % and three of its last digits: modules measure less well than meters. */
export function liveDataAgrees(logged: Of<"liveData">, predicted: readonly Of<"liveData">[]): boolean {
  const [first] = predicted;
  if (first === undefined || first.answered !== logged.answered) return false;
  return logged.values.every(({ name, value, text }) => {
    const others = predicted.flatMap((answer) =>
      answer.values.flatMap((candidate) => (candidate.name === name ? [candidate.value] : [])),
    );
    if (others.length === 0) return false;
    const margin = 0.05 * Math.abs(value) + 3 * lastDigit(text);
    return value >= Math.min(...others) - margin && value <= Math.max(...others) + margin;
  });
}

function lastDigit(text: string): number {
  const decimals = /\.(\d+)/.exec(text)?.[1]?.length ?? 0;
  return 10 ** -decimals;
}
