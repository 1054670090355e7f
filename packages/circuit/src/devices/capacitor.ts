import { across, type Evaluation } from "../kernel/iterate";
import type { PatternBuilder } from "../kernel/pattern";
import type { TwoTerminals } from "./two-terminal";

/** Capacitors: charge = farads · (v(a) − v(b)), amps(a → b) its time derivative. Nothing flows at an operating point. */
export interface CapacitorTable extends TwoTerminals {
  readonly farads: Float64Array;
  /** Entries aa, ab, ba, bb of each. */
  readonly entry: Int32Array;
  /** Charge slot of the first; the others follow. */
  readonly slot: number;
}

export function createCapacitorTable(
  terminals: TwoTerminals,
  pattern: PatternBuilder,
  slot: number,
): CapacitorTable {
  const { count, a, b } = terminals;
  const entry = new Int32Array(4 * count);
  for (let i = 0; i < count; i++) {
    const rows = [a[i], b[i]];
    entry.set(
      rows.flatMap((row) => rows.map((column) => pattern.entry(row, column))),
      4 * i,
    );
  }
  return { ...terminals, farads: new Float64Array(count), entry, slot };
}

export function flowCapacitors(table: CapacitorTable, x: Evaluation): void {
  const { count, a, b, farads, flow, slot } = table;
  for (let i = 0; i < count; i++) {
    const charge = farads[i] * across(x, a[i], b[i]);
    x.charge[slot + i] = charge;
    x.amps[flow + i] = x.rate * charge + x.history[slot + i];
  }
}

export function stampCapacitors(table: CapacitorTable, jacobian: Float64Array, rate: number): void {
  const { count, entry, farads } = table;
  for (let i = 0; i < count; i++) {
    const siemens = rate * farads[i];
    jacobian[entry[4 * i]] += siemens;
    jacobian[entry[4 * i + 1]] -= siemens;
    jacobian[entry[4 * i + 2]] -= siemens;
    jacobian[entry[4 * i + 3]] += siemens;
  }
}
