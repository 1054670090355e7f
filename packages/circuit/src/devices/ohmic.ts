import { beyond, carry, type Evaluation } from "../kernel/iterate";
import { stampConductance, type TwoTerminals } from "./two-terminal";

/** Resistors, switches and sources with internal resistance: amps(a → b) = siemens · (v(a) − v(b) − emf). */
export interface OhmicTable extends TwoTerminals {
  readonly siemens: Float64Array;
  readonly emf: Float64Array;
}

export function createOhmicTable(terminals: TwoTerminals): OhmicTable {
  return {
    ...terminals,
    siemens: new Float64Array(terminals.count),
    emf: new Float64Array(terminals.count),
  };
}

export function ohmicAmps(table: OhmicTable, x: Evaluation, i: number, drive: number): number {
  return table.siemens[i] * beyond(x, table.a[i], table.b[i], drive * table.emf[i]);
}

/** `drive` scales every independent source (1 outside source stepping). */
export function balanceOhmic(table: OhmicTable, x: Evaluation, drive: number): void {
  for (let i = 0; i < table.count; i++) carry(x, table.a[i], table.b[i], ohmicAmps(table, x, i, drive));
}

export function stampOhmic(table: OhmicTable, jacobian: Float64Array): void {
  for (let i = 0; i < table.count; i++) stampConductance(jacobian, table.entry, i, table.siemens[i]);
}
