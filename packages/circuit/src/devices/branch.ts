import { across, type Evaluation } from "../kernel/iterate";
import type { PatternBuilder } from "../kernel/pattern";

/**
 * Elements whose current is an unknown of its own: ideal voltage sources, vcvs, ccvs, and anything whose current
 * another element senses. Branch k adds its current to the Kirchhoff law of its two nodes and one equation,
 *
 *   weight · (v(a) − v(b) − ohms · amps − emf − gain · control) = 0
 *
 * where control is a voltage (c, d nodes) or the current of another branch (`sensed`, `size` when there is none).
 * The weight, 1 / max(1 Ω, ohms), keeps an open switch of 1e12 Ω from dwarfing the other equations.
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
  readonly emf: Float64Array;
  readonly gain: Float64Array;
  /** Eight entries per branch: current in rows a, b; then a, b, own current, controlA, controlB, sensed. */
  readonly entry: Int32Array;
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
  builder: PatternBuilder,
): BranchTable {
  const pick = (of: (p: BranchPlacement) => number) => Int32Array.from(placements, of);
  return {
    count: placements.length,
    a: pick((p) => p.a),
    b: pick((p) => p.b),
    unknown: pick((p) => p.unknown),
    controlA: pick((p) => p.controlA),
    controlB: pick((p) => p.controlB),
    sensed: pick((p) => p.sensed ?? ground),
    ohms: new Float64Array(placements.length),
    emf: new Float64Array(placements.length),
    gain: new Float64Array(placements.length),
    entry: Int32Array.from(
      placements.flatMap((p) => [
        builder.entry(p.a, p.unknown),
        builder.entry(p.b, p.unknown),
        builder.entry(p.unknown, p.a),
        builder.entry(p.unknown, p.b),
        builder.entry(p.unknown, p.unknown),
        builder.entry(p.unknown, p.controlA),
        builder.entry(p.unknown, p.controlB),
        p.sensed === undefined ? 0 : builder.entry(p.unknown, p.sensed),
      ]),
    ),
  };
}

const weightOf = (ohms: number): number => 1 / Math.max(1, ohms);

export function balanceBranches(table: BranchTable, x: Evaluation, drive: number): void {
  const { residual, throughput, high, low } = x;
  for (let i = 0; i < table.count; i++) {
    const row = table.unknown[i];
    const amps = high[row];
    const fine = low[row];
    const a = table.a[i];
    const b = table.b[i];
    // Both parts of the current, so that Kirchhoff's law closes beyond the last digit of a large one.
    residual[a] += amps;
    residual[b] -= amps;
    residual[a] += fine;
    residual[b] -= fine;
    throughput[a] += Math.abs(amps);
    throughput[b] += Math.abs(amps);
    const weight = weightOf(table.ohms[i]);
    const volts = across(x, a, b);
    const emf = drive * table.emf[i];
    const drop = table.ohms[i] * (amps + fine);
    const sensed = table.sensed[i];
    const control = across(x, table.controlA[i], table.controlB[i]) + high[sensed] + low[sensed];
    residual[row] += weight * (volts - emf - drop - table.gain[i] * control);
    const terms = Math.abs(high[a]) + Math.abs(high[b]) + Math.abs(emf) + Math.abs(drop);
    throughput[row] += weight * (terms + Math.abs(table.gain[i] * control));
  }
}

export function stampBranches(table: BranchTable, jacobian: Float64Array): void {
  const { entry } = table;
  for (let i = 0; i < table.count; i++) {
    const at = 8 * i;
    const weight = weightOf(table.ohms[i]);
    const gain = weight * table.gain[i];
    jacobian[entry[at]] += 1;
    jacobian[entry[at + 1]] -= 1;
    jacobian[entry[at + 2]] += weight;
    jacobian[entry[at + 3]] -= weight;
    jacobian[entry[at + 4]] -= weight * table.ohms[i];
    jacobian[entry[at + 5]] -= gain;
    jacobian[entry[at + 6]] += gain;
    jacobian[entry[at + 7]] -= gain;
  }
}
