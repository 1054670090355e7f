import type { Attachable } from "./attachable";
import type { ElementChange, NodeName } from "./network";
import type { Result } from "./result";

/** A network made ready to be solved again and again with other numbers. */
export interface Circuit {
  /** Every node, ground among them, by first appearance. */
  readonly nodes: readonly NodeName[];
  /**
   * Changes numbers of one element (or opens or closes a switch) for the next solve. A field the element was
   * prepared without, where that changes the topology (`ohms` of an ideal source, `seriesOhms`), is refused; so is
   * anything out of range. Nothing changes when an error comes back.
   */
  set(id: string, change: ElementChange): Result<void>;
  /** Solves Kirchhoff's laws. The answer is a snapshot: later changes do not touch it. */
  operatingPoint(options?: SolveOptions): Result<OperatingPoint>;
  /**
   * Solves without making anything new: the answer is a view of the solver's own arrays, the same at every call. Its volts
   * and amps hold until the next solve, its quantities until the next change. For loops over many values.
   */
  solve(options?: SolveOptions): Result<OperatingPoint>;
  /**
   * Lays a two-terminal element across two nodes of the prepared network, as one lays an instrument's leads: far cheaper
   * than preparing the network with it, and to the same answers. It can be read and changed like any other until it is
   * taken away. Kinds: resistor, voltageSource with `ohms`, currentSource, switch, diode without `seriesOhms`,
   * filament, curve; 16 at once.
   *
   * Errors: invalid_element, duplicate_id, unknown_node.
   */
  attach(element: Attachable): Result<void>;
  /** Takes an attached element away. Errors: unknown_element. */
  detach(id: string): Result<void>;
  /**
   * Solves, and says what a source between a and b would have to be to stand for the whole network there, for small
   * changes about this operating point (L. Thévenin, 1883). Errors: unknown_node and those of `operatingPoint`.
   */
  thevenin(a: NodeName, b: NodeName, options?: SolveOptions): Result<Thevenin>;
  /**
   * Solves, and says how the network answers to currents pushed through pairs of its nodes: into the first, out of the
   * second. Many questions of the kind "what if these few parts were different" then cost one solve together. Errors:
   * unknown_node and those of `operatingPoint`.
   */
  responses(pairs: readonly (readonly [NodeName, NodeName])[], options?: SolveOptions): Result<Responses>;
  /**
   * Floating-point additions, multiplications, divisions and exponentials that solving has taken so far, at the least:
   * those inside device laws are not counted. For benchmarks.
   */
  readonly operations: number;
  /** Where the last solve ended, to start others from; undefined when it did not converge. */
  startingPoint(): StartingPoint | undefined;
}

/** Holds until the next solve or change of the circuit. */
export interface Responses {
  /** Volts by which `node` rises for each ampere through pair `at`, for small changes, Ω. Throws for an unknown node. */
  ohms(at: number, node: NodeName): number;
  /** Whether the straight line is good enough: false where a curve bends on the way, and a solve is needed instead. */
  holds(amps: ArrayLike<number>): boolean;
  /** A snapshot of the network with these currents through the pairs besides, A; exact where `holds` is true. */
  shifted(amps: ArrayLike<number>): OperatingPoint;
}

export interface Thevenin {
  /** Volts of a above b with nothing more connected. */
  readonly openVolts: number;
  /** Source resistance; `Infinity` when no element ties a to b, not even over ground. */
  readonly ohms: number;
}

/** A solution as the solver needs it to go on from there. Valid for the circuit it came from, whatever its numbers. */
export interface StartingPoint {
  readonly high: Float64Array;
  readonly low: Float64Array;
  readonly junctions: Float64Array;
  readonly drives: Float64Array;
  readonly curves: Float64Array;
  readonly laws: readonly Float64Array[];
  readonly states: Int32Array;
}

/** Limits of one solve. Every one of them is a count of Newton iterations or of continuation steps. */
export interface SolveOptions {
  /** Newton iterations of each attempt; default 60. */
  readonly maxIterations?: number;
  /** Steps of the leak that fades away, tried second; 0 leaves this out; default 24. */
  readonly shuntSteps?: number;
  /** First number of steps in which the sources are brought up, tried last; 0 leaves this out; default 20. */
  readonly sourceSteps?: number;
  /** Rounds of changing the states of relays and the like; default 50. */
  readonly stateRounds?: number;
  /** Start from the last solution of this circuit; default true. */
  readonly warmStart?: boolean;
  /**
   * Start from here instead, whatever was solved last: as quick as a warm start, and the answer depends on this
   * circuit's numbers alone. Falls back to a start from nothing. Comes before `warmStart`.
   */
  readonly startFrom?: StartingPoint;
}

/** A solved network. */
export interface OperatingPoint {
  /** Volts of a node above ground. Throws for a name the network does not have. */
  volts(node: NodeName): number;
  /**
   * Amps through an element, counted into its first-named terminal (a, positive, anode, from): a discharging
   * source reads negative. For a regulator the amps out of its output. Throws for an unknown id.
   */
  amps(elementId: string): number;
  /**
   * A further quantity of an element, by the name that its kind documents ("celsius", "radiansPerSecond",
   * "isEnergised"). Throws for an element that has none of this name.
   */
  quantity(elementId: string, name: string): number;
  /** Nodes that no element ties to ground (open switches and 1e12 Ω do not count); a 1e-12 S leak holds each. */
  readonly floatingNodes: readonly NodeName[];
  /** Newton iterations spent, all attempts together. */
  readonly iterations: number;
  /** Largest |sum of currents| at any node. */
  readonly residualAmps: number;
}
