import type { ElementChange, NodeName } from "../network";
import type { Result } from "../result";
import type { TransientEvent, TransientOptions, TransientState } from "./options";

/** Recorded samples. Asking for what was not recorded throws. */
export interface Waveforms {
  /** Rising; where something jumps two samples share one time: just before and just after. */
  readonly seconds: Float64Array;
  /** Volts of a node above ground, a sample for each time. */
  volts(node: NodeName): Float64Array;
  /** Amps through an element, counted as in OperatingPoint.amps. */
  amps(element: string): Float64Array;
  quantity(element: string, name: string): Float64Array;
  /**
   * The same signals at other times (rising or not, within the recorded ones), by polynomials through what the method
   * solved for inside each step: as exact as the steps. At a jump the value after it.
   */
  samplesAt(seconds: ArrayLike<number>): Waveforms;
}

/** What a meter or a scope shows: a voltage between two nodes, a current, or a quantity of an element. */
export type Signal =
  | { readonly plus: NodeName; readonly minus?: NodeName }
  | { readonly amps: string }
  | { readonly element: string; readonly quantity: string };

/** `rms` of everything, `acRms` without the average. */
export interface Measures {
  readonly average: number;
  readonly rms: number;
  readonly acRms: number;
  readonly min: number;
  readonly max: number;
}

/** `duty`: share of the time above the threshold; `rises`: how often it is crossed upwards; `hertz`: rises per second. */
export interface Timing {
  readonly duty: number;
  readonly rises: number;
  readonly hertz: number;
}

/**
 * Waveforms with all that the steps know of them: integrals are those of the polynomials that the method solved for.
 * A signal needs its nodes (without `minus`: against ground), element or quantity recorded.
 */
export interface MeasuredWaveforms extends Waveforms {
  measure(signal: Signal): Measures;
  /** The end is taken to join the start, as in a period. */
  timing(signal: Signal, threshold: number): Timing;
}

/** What happened from start to end. */
export interface Transient extends MeasuredWaveforms {
  /** Changes of state in the order in which they happened. */
  readonly events: readonly TransientEvent[];
  /** For `continueFrom`. */
  readonly end: TransientState;
  /** Steps tried, those among them that were rejected, and Newton iterations. */
  readonly steps: number;
  readonly rejectedSteps: number;
  readonly iterations: number;
}

/** A network made ready to be followed through time again and again. */
export interface TransientCircuit {
  readonly nodes: readonly NodeName[];
  /** As Circuit.set. What drives have written stays as well. */
  set(id: string, change: ElementChange): Result<void>;
  /**
   * Follows the network through time. Errors: those of a solve, which then carry `seconds`; invalid_option;
   * unknown_element; step_too_short; step_limit.
   */
  run(options: TransientOptions): Result<Transient>;
}
