/**
 * A device stated as equations f(x) + dq(x)/dt = 0, for everything that is more than a curve between two nodes: a motor
 * with its rotor, a filament with its heat, a fuse that melts.
 *
 * The local unknowns x are the volts of each terminal above the last one, then the internal unknowns (a coil's amps, a
 * rotor's radians per second, a temperature). Row i < terminals − 1 is the current that flows from the circuit into
 * terminal i (the last terminal returns the sum); every further row is the equation of one internal unknown.
 */
export interface DeviceLaw<Parameters> {
  /** Number of terminals, two or more. */
  readonly terminals: number;
  readonly internals: readonly InternalUnknown[];
  /**
   * Writes f, q and their derivatives at x into `out`, which arrives filled with zeros. With `out.isStatic` there is no
   * time: the change of q counts for nothing (but a transient starts from this q), and an internal unknown that would take minutes to move (melting, state of charge) has to be
   * held at its initial value by its f. Must be finite for every finite x, and must not read or keep anything else.
   */
  evaluate(parameters: Parameters, x: Float64Array, out: LawOutput): void;
  /** Values of the internal unknowns from which a cold start begins, and those that a static law holds. */
  initial(parameters: Parameters): readonly number[];
  /**
   * Draws x nearer to the x of the last evaluation where the equations are too steep for a full Newton step. Returns
   * true when it changed x; the step is then not yet the last. `isStatic` as in LawOutput.
   */
  limit?(parameters: Parameters, x: Float64Array, last: Float64Array, isStatic: boolean): boolean;
}

export interface InternalUnknown {
  /** Under which `quantity` reports it, with its unit: "ampsArmature", "radiansPerSecond", "celsius". */
  readonly name: string;
  /** A Newton step no larger than this is small, in the unknown's own unit. */
  readonly tolerance: number;
}

/** Rows and columns as in DeviceLaw; matrices are row-major, `size` = terminals − 1 + internals. */
export interface LawOutput {
  readonly size: number;
  readonly f: Float64Array;
  readonly q: Float64Array;
  readonly df: Float64Array;
  readonly dq: Float64Array;
  isStatic: boolean;
  /** Time of a transient; 0 otherwise. */
  seconds: number;
}
