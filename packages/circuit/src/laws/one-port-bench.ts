import type { DeviceLaw, LawOutput } from "../devices/law";

// A small solver of its own for tests of laws: one device with two terminals behind a source and a resistor.

/** A source of `volts` with `ohms`, or of `amps` when `ohms` is Infinity. */
export interface Drive {
  readonly volts?: number;
  readonly amps?: number;
  readonly ohms?: number;
}

export function evaluateLaw<P>(
  law: DeviceLaw<P>,
  parameters: P,
  x: Float64Array,
  isStatic = false,
): LawOutput {
  const size = law.terminals - 1 + law.internals.length;
  const out: LawOutput = {
    size,
    f: new Float64Array(size),
    q: new Float64Array(size),
    df: new Float64Array(size * size),
    dq: new Float64Array(size * size),
    isStatic,
    seconds: 0,
  };
  law.evaluate(parameters, x, out);
  return out;
}

/** Largest difference between the stated derivatives and central differences, as a part of the larger of both. */
export function worstSlope<P>(
  law: DeviceLaw<P>,
  parameters: P,
  x: Float64Array,
  steps: readonly number[],
  isStatic = false,
): number {
  const here = evaluateLaw(law, parameters, x, isStatic);
  let worst = 0;
  for (let column = 0; column < here.size; column++) {
    const h = steps[column] ?? 1e-6;
    const at = (shift: number) => {
      const moved = x.slice();
      moved[column] = (moved[column] ?? 0) + shift;
      return evaluateLaw(law, parameters, moved, isStatic);
    };
    const [up, down] = [at(h), at(-h)];
    for (const [values, slopes] of [["f", "df"] as const, ["q", "dq"] as const]) {
      for (let row = 0; row < here.size; row++) {
        const difference = ((up[values][row] ?? 0) - (down[values][row] ?? 0)) / (2 * h);
        const stated = here[slopes][row * here.size + column] ?? Number.NaN;
        // Rounding of the two values, magnified by the quotient.
        const noise = (4e-16 * Math.abs(up[values][row] ?? 0)) / h + 1e-12;
        const gap = Math.max(0, Math.abs(difference - stated) - noise);
        worst = Math.max(worst, gap / Math.max(Math.abs(stated), Math.abs(difference), 1e-12));
      }
    }
  }
  return worst;
}

const coldStart = <P>(law: DeviceLaw<P>, parameters: P): Float64Array =>
  Float64Array.from([...new Array<number>(law.terminals - 1).fill(0), ...law.initial(parameters)]);

/** Balance of the device behind its drive, by Newton's method with the law's own limits; undefined if none is found. */
export function settle<P>(
  law: DeviceLaw<P>,
  parameters: P,
  drive: Drive,
  start = coldStart(law, parameters),
  maxIterations = 100,
): Float64Array | undefined {
  return iterate(law, parameters, drive, start, maxIterations, undefined);
}

/** States at every step of `seconds` up to `until`, by the implicit Euler rule of second order (trapezoidal q). */
export function run<P>(
  law: DeviceLaw<P>,
  parameters: P,
  drive: Drive,
  seconds: number,
  until: (x: Float64Array, time: number) => boolean,
  start = coldStart(law, parameters),
): { readonly time: number; readonly x: Float64Array }[] {
  // The terminal has no memory: start it where the drive puts it with the internals held.
  let x = start;
  const rows = [];
  let previous = settleTerminal(law, parameters, drive, x);
  for (let time = 0; ; time += seconds) {
    rows.push({ time, x: previous });
    if (until(previous, time)) return rows;
    const f = evaluateLaw(law, parameters, previous).f;
    const q = evaluateLaw(law, parameters, previous).q;
    const next = iterate(law, parameters, drive, previous.slice(), 100, { seconds, f, q });
    if (next === undefined) throw new Error(`no convergence at ${time} s`);
    x = next;
    previous = x;
  }
}

function settleTerminal<P>(law: DeviceLaw<P>, parameters: P, drive: Drive, x: Float64Array): Float64Array {
  const at = x.slice();
  for (let round = 0; round < 100; round++) {
    const out = evaluateLaw(law, parameters, at);
    const [residual, slope] = driven(drive, at[0] ?? 0, out.f[0] ?? 0, out.df[0] ?? 0);
    at[0] = (at[0] ?? 0) - residual / slope;
  }
  return at;
}

function driven(drive: Drive, v: number, amps: number, siemens: number): [number, number] {
  const { volts = 0, amps: forced = 0, ohms = 1e-12 } = drive;
  return [amps - forced - (volts - v) / ohms, siemens + 1 / ohms];
}

interface Step {
  readonly seconds: number;
  readonly f: Float64Array;
  readonly q: Float64Array;
}

function iterate<P>(
  law: DeviceLaw<P>,
  parameters: P,
  drive: Drive,
  start: Float64Array,
  maxIterations: number,
  step: Step | undefined,
): Float64Array | undefined {
  const x = start.slice();
  for (let round = 0; round < maxIterations; round++) {
    const out = evaluateLaw(law, parameters, x, step === undefined);
    const { size } = out;
    const residual = new Float64Array(size);
    const jacobian = out.df.slice();
    for (let row = 0; row < size; row++) {
      residual[row] = out.f[row] ?? 0;
      // Equations without a memory hold at every moment; the others are averaged over the step.
      const remembers = out.dq.subarray(row * size, (row + 1) * size).some((slope) => slope !== 0);
      if (step && remembers) {
        // Trapezoidal: (q − q₀)/h + (f + f₀)/2, times two.
        residual[row] =
          (out.f[row] ?? 0) +
          (step.f[row] ?? 0) +
          (2 * ((out.q[row] ?? 0) - (step.q[row] ?? 0))) / step.seconds;
        for (let column = 0; column < size; column++) {
          const k = row * size + column;
          jacobian[k] = (out.df[k] ?? 0) + (2 * (out.dq[k] ?? 0)) / step.seconds;
        }
      }
    }
    [residual[0], jacobian[0]] = driven(drive, x[0] ?? 0, out.f[0] ?? 0, out.df[0] ?? 0);
    const change = solve(jacobian, residual, size);
    const last = x.slice();
    for (let i = 0; i < size; i++) x[i] = (x[i] ?? 0) - (change[i] ?? 0);
    const limited = law.limit?.(parameters, x, last, step === undefined) ?? false;
    if (x.some((value) => !Number.isFinite(value))) return undefined;
    const small = x.every(
      (value, i) => Math.abs(value - (last[i] ?? 0)) <= 1e-10 * Math.max(1, Math.abs(value)),
    );
    if (small && !limited) return x;
  }
  return undefined;
}

/** Gauss with row exchange; a handful of equations. */
function solve(matrix: Float64Array, right: Float64Array, size: number): number[] {
  const rows = Array.from({ length: size }, (_, row) => [
    ...matrix.subarray(row * size, (row + 1) * size),
    right[row] ?? 0,
  ]);
  const at = (row: number, column: number) => rows[row]?.[column] ?? 0;
  for (let k = 0; k < size; k++) {
    let best = k;
    for (let row = k + 1; row < size; row++) if (Math.abs(at(row, k)) > Math.abs(at(best, k))) best = row;
    [rows[k], rows[best]] = [rows[best] ?? [], rows[k] ?? []];
    for (let row = k + 1; row < size; row++) {
      const factor = at(row, k) / at(k, k);
      rows[row] = (rows[row] ?? []).map((value, column) => value - factor * at(k, column));
    }
  }
  const answer = new Array<number>(size).fill(0);
  for (let k = size - 1; k >= 0; k--) {
    let sum = at(k, size);
    for (let column = k + 1; column < size; column++) sum -= at(k, column) * (answer[column] ?? 0);
    answer[k] = sum / at(k, k);
  }
  return answer;
}
