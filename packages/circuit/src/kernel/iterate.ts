import type { Flows } from "./flows";
import type { Pattern } from "./pattern";

/**
 * The running solution: node voltages, branch currents, internal unknowns, and 0 for ground at index `size`. Each value
 * is the unevaluated sum high + low, so that the voltage across a milliohm between two nodes at 12 V keeps all its digits.
 */
export interface Iterate {
  readonly high: Float64Array;
  readonly low: Float64Array;
}

/** One evaluation of all elements: they read the iterate and write flows, the other equations' rows and the Jacobian. */
export interface Evaluation extends Iterate {
  /** By row, what is left over: amps at a node, volts for a branch, and the unit of its equation for an internal unknown. */
  readonly residual: Float64Array;
  /** By row, the sum of the absolute terms: the yardstick for its residual. Filled while `isMeasuring`. */
  readonly throughput: Float64Array;
  isMeasuring: boolean;
  /** Amps of each flow. */
  readonly amps: Float64Array;
  /** What devices other than edges add to the pattern's entries; 0 in the bin, entry 0. */
  readonly jacobian: Float64Array;
  /** By row, 1 where an entry of the Jacobian has changed since the last factorisation. Ground has a place as well. */
  readonly stale: Uint8Array;
  /** False when a slope or a number behind `jacobian` has changed since it was put together. */
  jacobianIsCurrent: boolean;
  /** The charge, flux or other stored quantity of each slot at the iterate; see `rate`. */
  readonly charge: Float64Array;
  /** Its time derivative is taken as rate · charge + history. Both are 0 at an operating point. */
  readonly history: Float64Array;
  rate: number;
  /** Time, s; 0 for an operating point. */
  seconds: number;
  /** True while steep curves may be evaluated short of the iterate. */
  isLimiting: boolean;
  /** True when every curve is to be linearised where it stands, however little its slope has changed. */
  isRefreshing: boolean;
}

export function createEvaluation(pattern: Pattern, flows: Flows, charges: number): Evaluation {
  const length = pattern.size + 1;
  return {
    high: new Float64Array(length),
    low: new Float64Array(length),
    residual: new Float64Array(length),
    throughput: new Float64Array(length),
    isMeasuring: false,
    amps: new Float64Array(flows.count),
    jacobian: new Float64Array(pattern.rows.length),
    stale: new Uint8Array(length).fill(1),
    jacobianIsCurrent: false,
    charge: new Float64Array(charges),
    history: new Float64Array(charges),
    rate: 0,
    seconds: 0,
    isLimiting: true,
    isRefreshing: true,
  };
}

/** Voltage from a to b. */
export function across(iterate: Iterate, a: number, b: number): number {
  return iterate.high[a] - iterate.high[b] + (iterate.low[a] - iterate.low[b]);
}

/**
 * Voltage from a to b beyond an EMF. The difference of the high parts is split into itself and its rounding error
 * (Knuth, as in `takeStep`), or a battery of 10 mΩ at rest would seem to pass picoamps.
 */
export function beyond(iterate: Iterate, a: number, b: number, emf: number): number {
  const p = iterate.high[a];
  const q = iterate.high[b];
  const difference = p - q;
  const part = difference - p;
  const error = p - (difference - part) - (q + part);
  return difference - emf + (error + (iterate.low[a] - iterate.low[b]));
}

/**
 * How far a slope may be off before its device is linearised anew, as a part of it. The residual is always that of the
 * true curves, so this costs no accuracy: an error of the slope by this part slows convergence to this factor a step,
 * which is still quick, and spares most factorisations.
 */
const slopeTolerance = 1e-3;

/** True where the held slope will do. */
export const isSlopeKept = (x: Evaluation, held: number, slope: number): boolean =>
  held === slope || (!x.isRefreshing && Math.abs(slope - held) <= slopeTolerance * Math.abs(held));

/** Takes the slope of a device between rows a and b over into the Jacobian, unless the held one will do. */
export function holdSlope(
  x: Evaluation,
  held: Float64Array,
  i: number,
  slope: number,
  a: number,
  b: number,
): void {
  if (isSlopeKept(x, held[i], slope)) return;
  held[i] = slope;
  x.stale[a] = 1;
  x.stale[b] = 1;
}
