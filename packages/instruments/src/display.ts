import type { MeterFunction, Reading } from "./reading";

/** A measuring range of a display with 6000 counts. */
export interface DisplayRange {
  /** `60 V`. */
  readonly name: string;
  readonly unit: Reading["unit"];
  /** Display units in one base unit: 1000 for mV, 0.001 for kΩ. */
  readonly scale: number;
  /** Digits after the point on this range. */
  readonly decimals: number;
}

/** A display of 6000 counts shows 0 to 5999: 5.999 V is followed by 6.00 V on the next range. */
export const highestCount = 5999;

/**
 * Rounds to whole counts, halves away from zero. The value is first cut to nine significant digits, so that 2.5005,
 * which one machine may solve as 2.50049999999999 and another as 2.50050000000001, shows one and the same figure.
 */
export function toCounts(value: number, range: DisplayRange): number {
  const settled = Number((value * range.scale * 10 ** range.decimals).toPrecision(9));
  const counts = Math.sign(settled) * Math.floor(Math.abs(settled) + 0.5);
  return counts === 0 ? 0 : counts; // no minus zero on the display
}

/** One count in the base unit. */
export function resolutionOf(range: DisplayRange): number {
  return Number((1 / (range.scale * 10 ** range.decimals)).toPrecision(6));
}

/** What the display shows for a value in the base unit (V, Ω, A) on one range; `OL` beyond its last count. */
export function showOnRange(
  meterFunction: MeterFunction,
  value: number,
  range: DisplayRange,
  limitCounts: number = highestCount,
): Reading {
  const counts = toCounts(value, range);
  if (!Number.isFinite(value) || Math.abs(counts) > limitCounts) return overload(meterFunction, range);
  const shown = counts / 10 ** range.decimals;
  return {
    function: meterFunction,
    display: shown.toFixed(range.decimals),
    unit: range.unit,
    // Twelve digits remove the binary dust of the division; a display has four.
    value: Number((shown / range.scale).toPrecision(12)),
    state: "value",
    resolution: resolutionOf(range),
    range: range.name,
    sounds: false,
  };
}

export function overload(meterFunction: MeterFunction, range: DisplayRange): Reading {
  return {
    function: meterFunction,
    display: "OL",
    unit: range.unit,
    value: null,
    state: "overload",
    resolution: resolutionOf(range),
    range: range.name,
    sounds: false,
  };
}

/** A display without a figure behind it: zero on the dial, and a state that says why it means nothing. */
export function blank(
  meterFunction: MeterFunction,
  range: DisplayRange,
  state: "fuse_open" | "lead_open",
): Reading {
  return {
    ...overload(meterFunction, range),
    display: (0).toFixed(range.decimals),
    state,
  };
}

/** The lowest range that can show the value, or the highest range with `OL`. */
export function autorange(
  meterFunction: MeterFunction,
  value: number,
  ranges: readonly [DisplayRange, ...DisplayRange[]],
): Reading {
  let last = showOnRange(meterFunction, value, ranges[0]);
  for (const range of ranges.slice(1)) {
    if (last.state === "value") return last;
    last = showOnRange(meterFunction, value, range);
  }
  return last;
}
