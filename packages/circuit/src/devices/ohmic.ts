import { beyond, type Evaluation } from "../kernel/iterate";
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

/** `drive` scales every independent source (1 outside source stepping). */
export function flowOhmic(table: OhmicTable, x: Evaluation, drive: number): void {
  const { count, a, b, siemens, emf, flow } = table;
  const { amps } = x;
  for (let i = 0; i < count; i++) amps[flow + i] = siemens[i] * beyond(x, a[i], b[i], drive * emf[i]);
}

export function stampOhmic(table: OhmicTable, jacobian: Float64Array): void {
  const { count, entry, siemens } = table;
  for (let i = 0; i < count; i++) stampConductance(jacobian, entry, i, siemens[i]);
}
