import type { Pattern } from "./pattern";

/**
 * The running solution: node voltages, branch currents, and 0 for ground at index `size`. Each value is the
 * unevaluated sum high + low, so that the voltage across a milliohm between two nodes at 12 V keeps all its digits.
 */
export interface Iterate {
  readonly high: Float64Array;
  readonly low: Float64Array;
}

/** What the elements make of an iterate: by row, what is left over (amps; volts for a branch) and its size. */
export interface Balance {
  readonly residual: Float64Array;
  /** Sum of the absolute terms of the row: the yardstick for its residual. */
  readonly throughput: Float64Array;
}

/** One evaluation of all elements: read the iterate, add to the balance and to the Jacobian's entries. */
export interface Evaluation extends Iterate, Balance {
  readonly jacobian: Float64Array;
}

export function createEvaluation(pattern: Pattern): Evaluation {
  const length = pattern.size + 1;
  return {
    high: new Float64Array(length),
    low: new Float64Array(length),
    residual: new Float64Array(length),
    throughput: new Float64Array(length),
    jacobian: new Float64Array(pattern.rows.length),
  };
}

/** Voltage from a to b, to the precision of the pair. */
export function across(iterate: Iterate, a: number, b: number): number {
  return iterate.high[a] - iterate.high[b] + (iterate.low[a] - iterate.low[b]);
}

/**
 * Voltage from a to b beyond an EMF. The difference of the high parts is split into itself and its rounding error
 * (Knuth, as in `advance`), or a battery of 10 mΩ at rest would seem to pass picoamps.
 */
export function beyond(iterate: Iterate, a: number, b: number, emf: number): number {
  const p = iterate.high[a];
  const q = iterate.high[b];
  const difference = p - q;
  const part = difference - p;
  const error = p - (difference - part) - (q + part);
  return difference - emf + (error + (iterate.low[a] - iterate.low[b]));
}

/** Lets a current leave row `from` and enter row `to`. */
export function carry(balance: Balance, from: number, to: number, amps: number): void {
  const size = Math.abs(amps);
  balance.residual[from] += amps;
  balance.residual[to] -= amps;
  balance.throughput[from] += size;
  balance.throughput[to] += size;
}

/** Adds a step to unknown i and renormalises the pair (error-free sum; D. E. Knuth, TAOCP vol. 2, 4.2.2). */
export function advance(iterate: Iterate, i: number, step: number): void {
  const high = iterate.high[i];
  const add = step + iterate.low[i];
  const sum = high + add;
  const part = sum - high;
  iterate.high[i] = sum;
  iterate.low[i] = high - (sum - part) + (add - part);
}
