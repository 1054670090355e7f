import { beyond, type Evaluation } from "../kernel/iterate";
import type { TwoTerminals } from "./two-terminal";

/** Resistors, switches and sources with internal resistance: amps(a → b) = siemens · (v(a) − v(b) − emf). */
export interface OhmicTable extends TwoTerminals {
  readonly siemens: Float64Array;
  readonly emf: Float64Array;
}

export function createOhmicTable(terminals: TwoTerminals, siemens: Float64Array): OhmicTable {
  return {
    ...terminals,
    siemens,
    emf: new Float64Array(terminals.count),
  };
}

/** Brings the flow of device i, and the residual, up to date with its numbers at an unchanged iterate. */
export function refreshOhmic(table: OhmicTable, x: Evaluation, i: number): void {
  const at = table.flow + i;
  const amps = table.siemens[i] * beyond(x, table.a[i], table.b[i], table.emf[i]);
  const change = amps - x.amps[at];
  x.amps[at] = amps;
  x.residual[table.a[i]] += change;
  x.residual[table.b[i]] -= change;
}

/**
 * Writes the flows, and unlike the passes of other tables adds them to residual and throughput at once. `drive` scales every
 * independent source (1 outside source stepping). Most of a harness is ohmic, so this loop writes out `beyond`
 * (kernel/iterate) over its own arrays. Ohmic flows are the first of all: flow i is that of device i.
 */
export function flowOhmic(table: OhmicTable, x: Evaluation, drive: number): void {
  const { count, a, b, siemens, emf } = table;
  const { amps, high, low, residual, throughput, isMeasuring } = x;
  for (let i = 0; i < count; i++) {
    const from = a[i];
    const to = b[i];
    const p = high[from];
    const q = high[to];
    const difference = p - q;
    const part = difference - p;
    const error = p - (difference - part) - (q + part);
    const flow = siemens[i] * (difference - drive * emf[i] + (error + (low[from] - low[to])));
    amps[i] = flow;
    residual[from] += flow;
    residual[to] -= flow;
    if (isMeasuring) {
      throughput[from] += Math.abs(flow);
      throughput[to] += Math.abs(flow);
    }
  }
}
