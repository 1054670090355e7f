import { type Indices, packIndices } from "./indices";

/** Every current of the network, as an arrow from one row to another. Kirchhoff's current law is their sum by row. */
export interface Flows {
  readonly count: number;
  readonly from: Indices;
  readonly to: Indices;
}

export interface FlowBuilder {
  /** Adds an arrow and answers its number; those of one table are added together and so follow each other. */
  add(from: number, to: number): number;
  /** The number that the next arrow will get. */
  next(): number;
  /** `largest` is the largest row there is. */
  finish(largest: number): Flows;
}

export function createFlowBuilder(): FlowBuilder {
  const from: number[] = [];
  const to: number[] = [];
  return {
    add: (a, b) => {
      to.push(b);
      return from.push(a) - 1;
    },
    next: () => from.length,
    finish: (largest) => ({
      count: from.length,
      from: packIndices(from, largest),
      to: packIndices(to, largest),
    }),
  };
}

/** Adds every flow from number `first` on to the residual of the two rows it joins. */
export function balanceFlows(flows: Flows, first: number, amps: Float64Array, residual: Float64Array): void {
  const { count, from, to } = flows;
  for (let i = first; i < count; i++) {
    const flow = amps[i];
    residual[from[i]] += flow;
    residual[to[i]] -= flow;
  }
}

/** Adds the size of every flow from number `first` on to the two rows it joins: the yardstick of their residual. */
export function measureFlows(
  flows: Flows,
  first: number,
  amps: Float64Array,
  throughput: Float64Array,
): void {
  const { count, from, to } = flows;
  for (let i = first; i < count; i++) {
    const size = Math.abs(amps[i]);
    throughput[from[i]] += size;
    throughput[to[i]] += size;
  }
}
