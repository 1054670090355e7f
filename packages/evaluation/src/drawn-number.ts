import type { RandomGenerator } from "pure-rand/types/RandomGenerator";
import { unit } from "./random";
import type { DrawnNumber } from "./scenario";

/** Three significant digits: as fine as anybody can tell, and coarse enough to be the same on every machine. */
const rounded = (value: number): number => Number(value.toPrecision(3));

function at(range: Exclude<DrawnNumber, number>, share: number): number {
  return range.spread === "log"
    ? range.from * (range.to / range.from) ** share
    : range.from + (range.to - range.from) * share;
}

/** Draws from the range; a fixed number is taken as it is. */
export function draw(number: DrawnNumber, generator: RandomGenerator): number {
  return typeof number === "number" ? number : rounded(at(number, unit(generator)));
}

/** A few values that stand for the whole range: its ends and its middle (of the decades when `log`). */
export function representatives(number: DrawnNumber): readonly number[] {
  return typeof number === "number" ? [number] : [0, 0.5, 1].map((share) => rounded(at(number, share)));
}
