import { across, type Evaluation } from "../kernel/iterate";
import type { Builders } from "./two-terminal";

/**
 * Elements whose current is an unknown of its own: ideal voltage sources, inductors, vcvs, ccvs, and anything whose
 * current another element senses. Branch k adds its current to the Kirchhoff law of its two nodes and one equation,
 *
 *   weight · (v(a) − v(b) − ohms · amps − d(henries · amps)/dt − emf − gain · control) = 0
 *
 * where control is a voltage (c, d nodes) or the current of another branch (`sensed`, `size` when there is none).
 * The weight, 1 / max(1 Ω, ohms + rate · henries), keeps an open switch of 1e12 Ω from dwarfing the other equations.
 */
export interface BranchTable {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Unknown and row of each branch. */
  readonly unknown: Int32Array;
  readonly controlA: Int32Array;
  readonly controlB: Int32Array;
  readonly sensed: Int32Array;
  readonly ohms: Float64Array;
  readonly henries: Float64Array;
  readonly emf: Float64Array;
  readonly gain: Float64Array;
  /** Eight entries per branch: current in rows a, b; then a, b, own current, controlA, controlB, sensed. */
  readonly entry: Int32Array;
  /**
   * Two flows a → b per branch, of the high and of the low part of its current, so that Kirchhoff's law closes beyond
   * the last digit of a large one. Those of branch i are flow + 2i and the next.
   */
  readonly flow: number;
  /** Flux slot of the first; the others follow. */
  readonly slot: number;
}

export interface BranchPlacement {
  readonly a: number;
  readonly b: number;
  readonly unknown: number;
  /** Ground for both when the branch has no controlling voltage. */
  readonly controlA: number;
  readonly controlB: number;
  /** Unknown of the sensed branch, or undefined. */
  readonly sensed: number | undefined;
}

export function createBranchTable(
  placements: readonly BranchPlacement[],
  ground: number,
  { pattern, flows }: Builders,
  slot: number,
): BranchTable {
  const pick = (of: (p: BranchPlacement) => number) => Int32Array.from(placements, of);
  const column = () => new Float64Array(placements.length);
  const flow = flows.next();
  for (const { a, b } of placements) {
    flows.add(a, b);
    flows.add(a, b);
  }
  return {
    count: placements.length,
    a: pick((p) => p.a),
    b: pick((p) => p.b),
    unknown: pick((p) => p.unknown),
    controlA: pick((p) => p.controlA),
    controlB: pick((p) => p.controlB),
    sensed: pick((p) => p.sensed ?? ground),
    ohms: column(),
    henries: column(),
    emf: column(),
    gain: column(),
    entry: Int32Array.from(
      placements.flatMap((p) => [
        pattern.entry(p.a, p.unknown),
        pattern.entry(p.b, p.unknown),
        pattern.entry(p.unknown, p.a),
        pattern.entry(p.unknown, p.b),
        pattern.entry(p.unknown, p.unknown),
        pattern.entry(p.unknown, p.controlA),
        pattern.entry(p.unknown, p.controlB),
        p.sensed === undefined ? 0 : pattern.entry(p.unknown, p.sensed),
      ]),
    ),
    flow,
    slot,
  };
}

const weightOf = (table: BranchTable, i: number, rate: number): number =>
  1 / Math.max(1, table.ohms[i] + rate * table.henries[i]);

export function flowBranches(table: BranchTable, x: Evaluation, drive: number): void {
  const { high, low } = x;
  for (let i = 0; i < table.count; i++) {
    const row = table.unknown[i];
    const amps = high[row];
    const fine = low[row];
    x.amps[table.flow + 2 * i] = amps;
    x.amps[table.flow + 2 * i + 1] = fine;
    const flux = table.henries[i] * (amps + fine);
    x.charge[table.slot + i] = flux;
    const induced = x.rate * flux + x.history[table.slot + i];
    const volts = across(x, table.a[i], table.b[i]);
    const drop = table.ohms[i] * (amps + fine);
    const sensed = table.sensed[i];
    const control = across(x, table.controlA[i], table.controlB[i]) + high[sensed] + low[sensed];
    x.residual[row] +=
      weightOf(table, i, x.rate) * (volts - drive * table.emf[i] - drop - induced - table.gain[i] * control);
  }
}

/** Adds to the row of each branch the size of its terms: the yardstick of its residual. */
export function measureBranches(table: BranchTable, x: Evaluation, throughput: Float64Array): void {
  const { high } = x;
  for (let i = 0; i < table.count; i++) {
    const row = table.unknown[i];
    const control = across(x, table.controlA[i], table.controlB[i]) + high[table.sensed[i]];
    const terms =
      Math.abs(high[table.a[i]]) +
      Math.abs(high[table.b[i]]) +
      Math.abs(table.emf[i]) +
      Math.abs(table.ohms[i] * high[row]) +
      Math.abs(x.rate * x.charge[table.slot + i]) +
      Math.abs(x.history[table.slot + i]) +
      Math.abs(table.gain[i] * control);
    throughput[row] += weightOf(table, i, x.rate) * terms;
  }
}

export function stampBranches(table: BranchTable, jacobian: Float64Array, rate: number): void {
  const { entry } = table;
  for (let i = 0; i < table.count; i++) {
    const at = 8 * i;
    const weight = weightOf(table, i, rate);
    const gain = weight * table.gain[i];
    jacobian[entry[at]] += 1;
    jacobian[entry[at + 1]] -= 1;
    jacobian[entry[at + 2]] += weight;
    jacobian[entry[at + 3]] -= weight;
    jacobian[entry[at + 4]] -= weight * (table.ohms[i] + rate * table.henries[i]);
    jacobian[entry[at + 5]] -= gain;
    jacobian[entry[at + 6]] += gain;
    jacobian[entry[at + 7]] -= gain;
  }
}
