/** Guard values at one moment of a step. */
interface Sample {
  seconds: number;
  readonly values: Float64Array;
}

export interface CrossingSearch {
  /**
   * Finds, to within `tolerance`, the first moment of a step at which a guard is above zero: none is at its start
   * (`before`), one is at its end (`now` as the search begins). `tryStep` ends the step at other seconds from its start,
   * leaves the values in `now` and answers whether one is above zero, or undefined where there is no solution.
   * Answers the seconds of a step that has just been tried and ends at or just after the crossing.
   */
  locate(
    stepSeconds: number,
    tolerance: number,
    tryStep: (seconds: number) => boolean | undefined,
  ): number | undefined;
}

/** Keeps its arrays from one search to the next. */
export function createCrossingSearch(before: Float64Array, now: Float64Array): CrossingSearch {
  const sample = (): Sample => ({ seconds: 0, values: new Float64Array(now.length) });
  let low = sample();
  let high = sample();
  /** The bound given up last. */
  let beyond = sample();
  return {
    locate(stepSeconds, tolerance, tryStep) {
      low.seconds = 0;
      low.values.set(before);
      high.seconds = stepSeconds;
      high.values.set(now);
      beyond.seconds = Number.NaN;
      let tried = stepSeconds;
      let widths: readonly [twoAgo: number, oneAgo: number] = [
        Number.POSITIVE_INFINITY,
        Number.POSITIVE_INFINITY,
      ];
      for (;;) {
        const width = high.seconds - low.seconds;
        if (width <= tolerance) break;
        // A little late, so that once it is right the crossing lies within the tolerance before it.
        const estimate = firstCrossing(low, high, beyond) + tolerance / 2;
        const isSlow = width > widths[0] / 2;
        if (!isSlow && estimate >= high.seconds - tolerance) break;
        widths = isSlow ? [Number.POSITIVE_INFINITY, width] : [widths[1], width];
        tried = isSlow ? low.seconds + width / 2 : Math.max(estimate, low.seconds + tolerance / 2);
        const isDue = tryStep(tried);
        if (isDue === undefined) return undefined;
        const spare = beyond;
        spare.seconds = tried;
        spare.values.set(now);
        if (isDue) {
          beyond = high;
          high = spare;
        } else {
          beyond = low;
          low = spare;
        }
      }
      if (tried === high.seconds) return tried;
      return tryStep(high.seconds) === undefined ? undefined : high.seconds;
    },
  };
}

/** When the first guard that is above zero at `high` crosses it. */
function firstCrossing(low: Sample, high: Sample, beyond: Sample): number {
  let first = high.seconds;
  for (let k = 0; k < high.values.length; k++) {
    if (high.values[k] > 0) first = Math.min(first, crossingOf(k, low, high, beyond));
  }
  return first;
}

/** By the parabola through three samples with time over value, where it stays between the bounds; else by a line. */
function crossingOf(k: number, low: Sample, high: Sample, beyond: Sample): number {
  const [a, b, c] = [low.values[k], high.values[k], beyond.values[k]];
  if (a >= 0) return low.seconds;
  const line = low.seconds + ((high.seconds - low.seconds) * -a) / (b - a);
  if (Number.isNaN(beyond.seconds) || c === a || c === b) return line;
  const parabola =
    (low.seconds * b * c) / ((a - b) * (a - c)) +
    (high.seconds * a * c) / ((b - a) * (b - c)) +
    (beyond.seconds * a * b) / ((c - a) * (c - b));
  return parabola > low.seconds && parabola < high.seconds ? parabola : line;
}
