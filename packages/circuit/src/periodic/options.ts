import type { Drive, Recording, StepLimits, TransientState } from "../transient/options";
import type { MeasuredWaveforms } from "../transient/transient-circuit";

export interface PeriodicOptions extends StepLimits {
  /** Period; or state `hertz`. Every drive has to repeat itself after it. */
  readonly periodSeconds?: number;
  readonly hertz?: number;
  readonly drives: readonly Drive[];
  /** Where the period shown starts; default 0. */
  readonly fromSeconds?: number;
  /** As in TransientOptions; default "operatingPoint". Where the search begins. */
  readonly start?: "operatingPoint" | "rest";
  readonly continueFrom?: TransientState;
  readonly record?: Recording;
  /** Periods to spend on the search; default 200. */
  readonly maxPeriods?: number;
}

/** One period of the steady state. */
export interface Periodic extends MeasuredWaveforms {
  readonly periodSeconds: number;
  /** Periods computed to find it. */
  readonly periods: number;
  /** The state at the end of the period, for `continueFrom`. */
  readonly end: TransientState;
}
