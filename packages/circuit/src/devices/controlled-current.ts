import { across, type Evaluation } from "../kernel/iterate";
import type { Builders } from "./two-terminal";

/**
 * vccs and cccs: amps(a → b) = gain · control, with control the voltage c → d or the current of a branch
 * (`sensed`, ground when there is none).
 */
export interface ControlledCurrentTable {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly controlA: Int32Array;
  readonly controlB: Int32Array;
  readonly sensed: Int32Array;
  readonly gain: Float64Array;
  /** Six entries per source: columns controlA, controlB, sensed in row a, then in row b. */
  readonly entry: Int32Array;
  readonly flow: number;
}

export interface ControlledCurrentPlacement {
  readonly a: number;
  readonly b: number;
  readonly controlA: number;
  readonly controlB: number;
  readonly sensed: number | undefined;
}

export function createControlledCurrentTable(
  placements: readonly ControlledCurrentPlacement[],
  ground: number,
  { pattern, flows }: Builders,
): ControlledCurrentTable {
  const flow = flows.next();
  for (const { a, b } of placements) flows.add(a, b);
  const pick = (of: (p: ControlledCurrentPlacement) => number) => Int32Array.from(placements, of);
  const entries = (row: number, p: ControlledCurrentPlacement): number[] => [
    pattern.entry(row, p.controlA),
    pattern.entry(row, p.controlB),
    p.sensed === undefined ? 0 : pattern.entry(row, p.sensed),
  ];
  return {
    count: placements.length,
    a: pick((p) => p.a),
    b: pick((p) => p.b),
    controlA: pick((p) => p.controlA),
    controlB: pick((p) => p.controlB),
    sensed: pick((p) => p.sensed ?? ground),
    gain: new Float64Array(placements.length),
    entry: Int32Array.from(placements.flatMap((p) => [...entries(p.a, p), ...entries(p.b, p)])),
    flow,
  };
}

export function flowControlledCurrents(table: ControlledCurrentTable, x: Evaluation): void {
  for (let i = 0; i < table.count; i++) {
    const sensed = table.sensed[i];
    const control = across(x, table.controlA[i], table.controlB[i]) + x.high[sensed] + x.low[sensed];
    x.amps[table.flow + i] = table.gain[i] * control;
  }
}

export function stampControlledCurrents(table: ControlledCurrentTable, jacobian: Float64Array): void {
  const { entry } = table;
  for (let i = 0; i < table.count; i++) {
    const at = 6 * i;
    const gain = table.gain[i];
    jacobian[entry[at]] += gain;
    jacobian[entry[at + 1]] -= gain;
    jacobian[entry[at + 2]] += gain;
    jacobian[entry[at + 3]] -= gain;
    jacobian[entry[at + 4]] += gain;
    jacobian[entry[at + 5]] -= gain;
  }
}
