import type { StartingPoint } from "../circuit";
import type { NodeName } from "../network";
import type { Wave } from "./wave";

/** Drives one changeable field of one element over time: the volts of a source, `closed` of a switch, a load torque. */
export interface Drive {
  readonly element: string;
  readonly field: string;
  readonly wave: Wave;
}

/** What to keep of a run. What is left out is not kept; without any, every node's volts and every element's amps. */
export interface Recording {
  readonly volts?: readonly NodeName[];
  /** Elements, counted as in OperatingPoint.amps. */
  readonly amps?: readonly string[];
  readonly quantities?: readonly { readonly element: string; readonly name: string }[];
}

/** Tolerances and limits of the integration. */
export interface StepLimits {
  /** Error of one step allowed to each unknown, as a part of it; default 1e-4. */
  readonly relativeTolerance?: number;
  /** … plus this at a node, V; default 1e-6. */
  readonly voltTolerance?: number;
  /** … or in a branch (inductor, ideal source), A; default 1e-6. */
  readonly ampTolerance?: number;
  /** … or this many times an internal unknown's Newton tolerance (laws document it); default 1e4. */
  readonly internalTolerance?: number;
  /**
   * Default: a twentieth of the run, or of the period of a sine that drives. What lies between two steps is known to their
   * order as well, but a guard that rises and falls again within one is not seen.
   */
  readonly maxStepSeconds?: number;
  /** Default 1e-13. A step is never shorter than the clock can tell at that time either. */
  readonly minStepSeconds?: number;
  /** Steps, rejected ones and those that locate events included; default 1 000 000. */
  readonly maxSteps?: number;
  /** Newton iterations of one stage; default 20. */
  readonly maxIterations?: number;
  /** How closely the moment of a change of state is located, s; default 1e-9 of the run. */
  readonly eventSeconds?: number;
  /** Changes of state at one moment, before the run fails for want of rest; default 50. */
  readonly stateRounds?: number;
}

export interface TransientOptions extends StepLimits {
  /** Time at which the run starts; default 0, or where `continueFrom` ended. Waves are stated in this time. */
  readonly fromSeconds?: number;
  /** Time at which it ends. */
  readonly untilSeconds: number;
  /**
   * "operatingPoint" (default): everything has settled at the first values of the drives. "rest": capacitors empty,
   * inductors without current, internal unknowns (speed, temperature) at their initial values.
   */
  readonly start?: "operatingPoint" | "rest";
  /** Go on from the end of an earlier run of the same circuit; numbers may have been `set` in between. */
  readonly continueFrom?: TransientState;
  /** Volts a → b of capacitors at the start, by id, in place of what `start` gives. */
  readonly initialVolts?: Readonly<Record<string, number>>;
  /** Amps a → b of inductors at the start, by id, alike. */
  readonly initialAmps?: Readonly<Record<string, number>>;
  readonly drives?: readonly Drive[];
  readonly record?: Recording;
  /** Answer at these times (rising, within the run) in place of every accepted step. */
  readonly at?: readonly number[];
}

/** Where a run ended. Valid for the circuit it came from. */
export interface TransientState extends StartingPoint {
  readonly seconds: number;
  /** Charges, fluxes and other stored quantities. */
  readonly charge: Float64Array;
  /** Step to start with. */
  readonly stepSeconds: number;
}

/** A relay that pulled in, a fuse that opened … */
export interface TransientEvent {
  readonly seconds: number;
  readonly element: string;
  /** The state entered; the kind of element says what it means. */
  readonly state: number;
}
