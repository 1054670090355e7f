import type { FlowBuilder } from "../kernel/flows";
import type { Evaluation } from "../kernel/iterate";
import type { Pair } from "./two-terminal";

/** Independent sources of current from node a to node b. */
export interface CurrentSourceTable {
  readonly count: number;
  readonly flow: number;
  readonly amps: Float64Array;
}

export function createCurrentSourceTable(pairs: readonly Pair[], flows: FlowBuilder): CurrentSourceTable {
  const flow = flows.next();
  for (const [a, b] of pairs) flows.add(a, b);
  return { count: pairs.length, flow, amps: new Float64Array(pairs.length) };
}

export function flowCurrentSources(table: CurrentSourceTable, x: Evaluation, drive: number): void {
  for (let i = 0; i < table.count; i++) x.amps[table.flow + i] = drive * table.amps[i];
}
