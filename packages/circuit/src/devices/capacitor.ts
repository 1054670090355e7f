import { across, type Evaluation } from "../kernel/iterate";
import { stampConductance, type TwoTerminals } from "./two-terminal";

/** Capacitors: charge = farads · (v(a) − v(b)), amps(a → b) its time derivative. Nothing flows at an operating point. */
export interface CapacitorTable extends TwoTerminals {
  readonly farads: Float64Array;
  /** Charge slot of the first; the others follow. */
  readonly slot: number;
}

export function createCapacitorTable(terminals: TwoTerminals, slot: number): CapacitorTable {
  return { ...terminals, farads: new Float64Array(terminals.count), slot };
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
  for (let i = 0; i < table.count; i++) stampConductance(jacobian, table.entry, i, rate * table.farads[i]);
}
