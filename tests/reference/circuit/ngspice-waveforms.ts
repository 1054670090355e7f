import type { NgspiceEngine } from "./ngspice-engine";

/** What ngspice made of a run in time, read at given times. */
export interface NgspiceWaveforms {
  readonly seconds: readonly number[];
  /** Samples of one vector, "v(a)" or "i(l1)", straight between ngspice's own steps. Throws for an unknown one. */
  samplesAt(vector: string, times: readonly number[]): readonly number[];
  /** By how much the vector changes over the step that holds each time and its neighbours: large where it jumps. */
  changesAt(vector: string, times: readonly number[]): readonly number[];
}

export interface TransientDeck {
  /** The circuit; `.ic` lines among it. */
  readonly lines: readonly string[];
  readonly untilSeconds: number;
  /** Longest step; default a ten-thousandth of the run. Has to be so short that neither method nor interpolation shows. */
  readonly maxStepSeconds?: number;
  /** Start from the stated initial conditions in place of an operating point. */
  readonly isFromRest?: boolean;
}

/** Tolerances far below what is compared; gear, as the trapezoidal rule rings after a switch. */
const options = "reltol=1e-6 abstol=1e-12 vntol=1e-9 chgtol=1e-18 method=gear gmin=1e-12 itl4=200";

export async function runTransientDeck(
  engine: NgspiceEngine,
  deck: TransientDeck,
): Promise<NgspiceWaveforms> {
  const { untilSeconds, maxStepSeconds = untilSeconds / 10_000 } = deck;
  const uic = deck.isFromRest ? " uic" : "";
  const { columns, complaints } = await engine.run([
    ...deck.lines,
    `.options ${options}`,
    `.tran ${maxStepSeconds} ${untilSeconds} 0 ${maxStepSeconds}${uic}`,
  ]);
  const waveforms = readWaveforms(columns);
  if ((waveforms.seconds.at(-1) ?? 0) < untilSeconds * (1 - 1e-9))
    throw new Error(`ngspice did not come to the end: ${complaints.slice(-3).join("; ")}`);
  return waveforms;
}

/** The columns of a `.tran` run; none when it failed. */
export function readWaveforms(columns: ReadonlyMap<string, readonly number[]>): NgspiceWaveforms {
  const seconds = columns.get("time") ?? [];
  const valuesOf = (vector: string) => {
    const values = columns.get(vector);
    if (values === undefined)
      throw new Error(`ngspice has no ${vector}, but ${[...columns.keys()].join(" ")}.`);
    return values;
  };
  return {
    seconds,
    samplesAt: (vector, times) => {
      const values = valuesOf(vector);
      return times.map((t) => {
        const { t0, t1, v0, v1 } = stepAround(seconds, values, t);
        return v0 + ((v1 - v0) * (t - t0)) / (t1 - t0);
      });
    },
    changesAt: (vector, times) => {
      const values = valuesOf(vector);
      return times.map((t) => {
        const { low, high } = stepAround(seconds, values, t);
        const near = values.slice(Math.max(0, low - 1), high + 2);
        return Math.max(...near) - Math.min(...near);
      });
    },
  };
}

function stepAround(seconds: readonly number[], values: readonly number[], t: number) {
  let low = 0;
  let high = seconds.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((seconds[middle] ?? Number.NaN) <= t) low = middle;
    else high = middle;
  }
  const [t0, t1, v0, v1] = [seconds[low], seconds[high], values[low], values[high]];
  if (t0 === undefined || t1 === undefined || v0 === undefined || v1 === undefined || t < t0 || t > t1)
    throw new Error(`${t} s is outside of the run.`);
  return { low, high, t0, t1, v0, v1 };
}
