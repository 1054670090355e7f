import type { PatternBuilder } from "../kernel/pattern";

/** Terminals and Jacobian entries (aa, ab, ba, bb per device) of the devices of one kind. */
export interface TwoTerminals {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly entry: Int32Array;
}

export function placeTwoTerminals(
  pairs: readonly (readonly [number, number])[],
  builder: PatternBuilder,
): TwoTerminals {
  return {
    count: pairs.length,
    a: Int32Array.from(pairs, ([a]) => a),
    b: Int32Array.from(pairs, ([, b]) => b),
    entry: Int32Array.from(
      pairs.flatMap(([a, b]) => [
        builder.entry(a, a),
        builder.entry(a, b),
        builder.entry(b, a),
        builder.entry(b, b),
      ]),
    ),
  };
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
