/** Every current of the network, as an arrow from one row to another. Kirchhoff's current law is their sum by row. */
export interface Flows {
  readonly count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

export interface FlowBuilder {
  /** Adds an arrow and answers its number; those of one table are added together and so follow each other. */
  add(from: number, to: number): number;
  /** The number that the next arrow will get. */
  next(): number;
  finish(): Flows;
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
    finish: () => ({ count: from.length, from: Int32Array.from(from), to: Int32Array.from(to) }),
  };
}

/** Adds every flow to the residual of the two rows it joins. */
export function balanceFlows(flows: Flows, amps: Float64Array, residual: Float64Array): void {
  const { count, from, to } = flows;
  for (let i = 0; i < count; i++) {
    const flow = amps[i];
    residual[from[i]] += flow;
    residual[to[i]] -= flow;
  }
}

/** Adds the size of every flow to the two rows it joins: the yardstick of their residual. */
export function measureFlows(flows: Flows, amps: Float64Array, throughput: Float64Array): void {
  const { count, from, to } = flows;
  for (let i = 0; i < count; i++) {
    const size = Math.abs(amps[i]);
    throughput[from[i]] += size;
    throughput[to[i]] += size;
  }
}
