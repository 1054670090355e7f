import type { DeviceLaw } from "../devices/law";
import type { NodeName, PrimitiveElement } from "../network";
import type { Rule } from "./rules";

/** A device with equations of its own, as a part of an element. */
export interface DevicePart {
  readonly kind: "device";
  readonly id: string;
  /** As many nodes as the law has terminals, in its order. */
  readonly nodes: readonly NodeName[];
  readonly law: DeviceLaw<unknown>;
  readonly parameters: unknown;
}

/** What an element is made of: the kinds that the solver has tables for. */
export type Part = PrimitiveElement | DevicePart;

/** What a rule for a change of state may look at. */
export interface Look {
  /** Volts of a node, hidden ones included. */
  volts(node: NodeName): number;
  /** Amps through a part, into its first terminal. */
  amps(part: string): number;
  /** An internal unknown of a device part, by name. */
  internal(part: string, name: string): number;
}

/** A change of state that is due as soon as `value` is above zero. */
export interface Guard {
  readonly value: number;
  readonly next: number;
}

/**
 * How one kind of element is checked and what it is made of. Parts of an element `K1` are called `K1#coil`, their hidden
 * nodes alike. Whatever the numbers and the state, `parts` must answer the same parts between the same nodes: only
 * optional fields that are absent may leave a part out, and then `set` refuses to bring them in later.
 */
export interface ElementDefinition<Element extends { readonly id: string; readonly kind: string }> {
  /** Range of every field that `set` may change. */
  readonly fields: Readonly<Record<string, Rule>>;
  readonly required: readonly string[];
  /** Optional fields that decide which parts there are. */
  readonly topological?: readonly string[];
  terminals(element: Element): readonly NodeName[];
  /** Checks what a range of one number cannot say; the message names field and remedy. */
  refuse?(element: Element): { readonly message: string; readonly field: string } | undefined;
  /** `timed` for a transient, where what has a memory needs its unknowns. */
  parts(element: Element, state: number, timed: boolean): readonly Part[];
  /** Parts whose amps add up to the current into the element's first terminal, with their sign. */
  amps(element: Element, timed: boolean): readonly (readonly [part: string, sign: 1 | -1])[];
  /** Discrete state at the start (released relay 0, energised 1 …); 0 when left out. */
  initialState?(element: Element): number;
  /**
   * Changes of state that are due at the operating point `look`, or during a transient. The number of guards is the
   * same in every state. `timed` is false for an operating point, where things that take minutes do not happen.
   */
  guards?(element: Element, state: number, look: Look, timed: boolean): readonly Guard[];
  /**
   * Further quantities to report by name and unit, such as { isEnergised: 1 }. One that is named like an internal unknown
   * of a part has to be that unknown.
   */
  quantities?(element: Element, state: number, look: Look): Readonly<Record<string, number>>;
}
