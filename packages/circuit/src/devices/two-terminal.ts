import type { FlowBuilder } from "../kernel/flows";
import { type Indices, packIndices } from "../kernel/indices";
import type { PatternBuilder } from "../kernel/pattern";

/** Terminals and flows of the devices of one kind. */
export interface TwoTerminals {
  readonly count: number;
  readonly a: Indices;
  readonly b: Indices;
  /** Flow of the first device, a → b; the others follow. */
  readonly flow: number;
}

export interface Builders {
  readonly pattern: PatternBuilder;
  readonly flows: FlowBuilder;
  /** The largest row there is: ground. */
  readonly largest: number;
}

export type Pair = readonly [a: number, b: number];

export function placeTwoTerminals(pairs: readonly Pair[], { flows, largest }: Builders): TwoTerminals {
  const flow = flows.next();
  for (const [a, b] of pairs) flows.add(a, b);
  return {
    count: pairs.length,
    a: packIndices(
      pairs.map(([a]) => a),
      largest,
    ),
    b: packIndices(
      pairs.map(([, b]) => b),
      largest,
    ),
    flow,
  };
}

/** The same for edges: their flows come before all others, so that edge and flow have the same number. */
export function placeEdges(pairs: readonly Pair[], builders: Builders): TwoTerminals {
  for (const [a, b] of pairs) builders.pattern.edge(a, b);
  return placeTwoTerminals(pairs, builders);
}
