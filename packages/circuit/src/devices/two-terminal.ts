import type { FlowBuilder } from "../kernel/flows";
import type { PatternBuilder } from "../kernel/pattern";

/** Terminals, flows and Jacobian entries (aa, ab, ba, bb per device) of the devices of one kind. */
export interface TwoTerminals {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly entry: Int32Array;
  /** Flow of the first device, a → b; the others follow. */
  readonly flow: number;
}

export interface Builders {
  readonly pattern: PatternBuilder;
  readonly flows: FlowBuilder;
}

export type Pair = readonly [a: number, b: number];

export function placeTwoTerminals(pairs: readonly Pair[], { pattern, flows }: Builders): TwoTerminals {
  const flow = flows.next();
  for (const [a, b] of pairs) flows.add(a, b);
  return {
    count: pairs.length,
    a: Int32Array.from(pairs, ([a]) => a),
    b: Int32Array.from(pairs, ([, b]) => b),
    entry: Int32Array.from(
      pairs.flatMap(([a, b]) => [
        pattern.entry(a, a),
        pattern.entry(a, b),
        pattern.entry(b, a),
        pattern.entry(b, b),
      ]),
    ),
    flow,
  };
}

/** Adds the conductance of every device to the Jacobian. */
export function stampAll(
  { count, entry }: TwoTerminals,
  jacobian: Float64Array,
  siemens: Float64Array,
): void {
  for (let i = 0; i < count; i++) stampConductance(jacobian, entry, i, siemens[i]);
}

/** Adds a conductance at device i to the Jacobian. */
export function stampConductance(
  jacobian: Float64Array,
  entry: Int32Array,
  device: number,
  siemens: number,
): void {
  const at = 4 * device;
  jacobian[entry[at]] += siemens;
  jacobian[entry[at + 1]] -= siemens;
  jacobian[entry[at + 2]] -= siemens;
  jacobian[entry[at + 3]] += siemens;
}
