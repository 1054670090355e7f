import type { Wave } from "./wave";

/** The formula that holds between two corners. */
export interface Piece {
  /** True when the value does not change within the piece. */
  readonly isLevel: boolean;
  valueAt(seconds: number): number | boolean;
}

export interface WaveForm {
  /** The first corner later than `seconds`; Infinity when there is none. */
  cornerAfter(seconds: number): number;
  /** The piece that `seconds`, which is no corner, lies in; undefined: the element's own value. */
  pieceAt(seconds: number): Piece | undefined;
  /** Longest step that follows the wave. */
  readonly stepSeconds: number;
}

const level = (value: number | boolean): Piece => ({ isLevel: true, valueAt: () => value });

const line = (t0: number, v0: number, t1: number, v1: number): Piece =>
  v0 === v1 ? level(v0) : { isLevel: false, valueAt: (t) => v0 + ((v1 - v0) * (t - t0)) / (t1 - t0) };

/** Says what is wrong with a wave, or undefined. */
export function refuseWave(wave: Wave): string | undefined {
  switch (wave.kind) {
    case "steps":
    case "line":
      if (wave.times.length === 0 || wave.times.length !== wave.values.length)
        return "needs as many values as times, one or more";
      if (!wave.times.every((t, i) => Number.isFinite(t) && (i === 0 || t > wave.times[i - 1])))
        return "needs finite times that rise";
      return undefined;
    case "pulse": {
      const { hertz, duty, delaySeconds = 0, riseSeconds = 0 } = wave;
      if (!(Number.isFinite(hertz) && hertz > 0)) return "needs hertz above 0";
      if (!(duty >= 0 && duty <= 1)) return "needs a duty from 0 to 1";
      if (!Number.isFinite(delaySeconds)) return "needs a finite delaySeconds";
      if (!(riseSeconds >= 0)) return "needs riseSeconds of 0 or more";
      const isFlag = typeof wave.low === "boolean" || typeof wave.high === "boolean";
      if (isFlag && riseSeconds > 0) return "cannot ramp between true and false";
      if (duty > 0 && duty < 1 && riseSeconds * hertz > Math.min(duty, 1 - duty))
        return "needs riseSeconds that fit into both parts of the period";
      return undefined;
    }
    case "sine": {
      const { offset = 0, amplitude, hertz, phaseDegrees = 0, delaySeconds = 0 } = wave;
      if (![offset, amplitude, phaseDegrees, delaySeconds].every(Number.isFinite))
        return "needs finite numbers";
      return Number.isFinite(hertz) && hertz > 0 ? undefined : "needs hertz above 0";
    }
  }
}

export function compileWave(wave: Wave): WaveForm {
  switch (wave.kind) {
    case "steps":
      return {
        ...cornersAt(wave.times),
        pieceAt: (t) => {
          const i = lastAtOrBefore(wave.times, t);
          return i < 0 ? undefined : level(wave.values[i]);
        },
      };
    case "line":
      return {
        ...cornersAt(wave.times),
        pieceAt: (t) => {
          const { times, values } = wave;
          const i = lastAtOrBefore(times, t);
          if (i < 0) return level(values[0]);
          if (i === times.length - 1) return level(values[i]);
          return line(times[i], values[i], times[i + 1], values[i + 1]);
        },
      };
    case "pulse":
      return compilePulse(wave);
    case "sine":
      return compileSine(wave);
  }
}

const cornersAt = (times: readonly number[]) => ({
  cornerAfter: (t: number) => times[lastAtOrBefore(times, t) + 1] ?? Number.POSITIVE_INFINITY,
  stepSeconds: Number.POSITIVE_INFINITY,
});

/** Bisection; −1 when all are later. */
function lastAtOrBefore(times: readonly number[], t: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle] <= t) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

function compilePulse(wave: Wave & { readonly kind: "pulse" }): WaveForm {
  const { low, high, hertz, duty, delaySeconds = 0, riseSeconds = 0 } = wave;
  const stepSeconds = Number.POSITIVE_INFINITY;
  if (duty === 0) return { cornerAfter: () => stepSeconds, pieceAt: () => level(low), stepSeconds };
  if (duty === 1) {
    const times = [delaySeconds];
    return { ...cornersAt(times), pieceAt: (t) => level(t < delaySeconds ? low : high) };
  }
  // Corners of period n, as parts of a period and a shift in seconds; times are formed the same way everywhere.
  const corners =
    riseSeconds > 0
      ? [
          [0, 0],
          [0, riseSeconds],
          [duty, 0],
          [duty, riseSeconds],
        ]
      : [
          [0, 0],
          [duty, 0],
        ];
  const timeOf = (n: number, k: number): number => {
    const m = n + Math.floor(k / corners.length);
    const [part, shift] = corners[k % corners.length];
    return delaySeconds + (m + part) / hertz + shift;
  };
  const periodOf = (t: number): number => Math.max(0, Math.floor((t - delaySeconds) * hertz) - 1);
  const placeOf = (t: number): { n: number; k: number } => {
    const n = periodOf(t);
    let k = -1;
    while (timeOf(n, k + 1) <= t) k++;
    return { n, k };
  };
  return {
    stepSeconds,
    cornerAfter: (t) => {
      const { n, k } = placeOf(t);
      return timeOf(n, k + 1);
    },
    pieceAt: (t) => {
      const { n, k } = placeOf(t);
      if (k < 0) return level(low);
      if (riseSeconds === 0) return level(k % 2 === 0 ? high : low);
      const isRamp = k % 2 === 0;
      const [from, to] = k % 4 < 2 ? [low, high] : [high, low];
      return isRamp ? line(timeOf(n, k), Number(from), timeOf(n, k + 1), Number(to)) : level(to);
    },
  };
}

function compileSine(wave: Wave & { readonly kind: "sine" }): WaveForm {
  const { offset = 0, amplitude, hertz, phaseDegrees = 0, delaySeconds } = wave;
  const phase = (phaseDegrees * Math.PI) / 180;
  const origin = delaySeconds ?? 0;
  const valueAt = (t: number): number => {
    // The whole turns are taken off first: late times keep their digits.
    const turns = (t - origin) * hertz;
    return offset + amplitude * Math.sin(2 * Math.PI * (turns - Math.floor(turns)) + phase);
  };
  const piece: Piece = { isLevel: false, valueAt };
  return {
    stepSeconds: 0.05 / hertz,
    cornerAfter: (t) =>
      delaySeconds !== undefined && t < delaySeconds ? delaySeconds : Number.POSITIVE_INFINITY,
    pieceAt: (t) => (delaySeconds !== undefined && t < delaySeconds ? level(valueAt(delaySeconds)) : piece),
  };
}
