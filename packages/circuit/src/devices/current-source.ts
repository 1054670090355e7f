import { carry, type Evaluation } from "../kernel/iterate";

/** Independent sources of current from node a to node b. */
export interface CurrentSourceTable {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly amps: Float64Array;
}

export function createCurrentSourceTable(pairs: readonly (readonly [number, number])[]): CurrentSourceTable {
  return {
    count: pairs.length,
    a: Int32Array.from(pairs, ([a]) => a),
    b: Int32Array.from(pairs, ([, b]) => b),
    amps: new Float64Array(pairs.length),
  };
}

export function balanceCurrentSources(table: CurrentSourceTable, x: Evaluation, drive: number): void {
  for (let i = 0; i < table.count; i++) carry(x, table.a[i], table.b[i], drive * table.amps[i]);
}
