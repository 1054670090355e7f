import type { StartingPoint } from "../circuit";
import { balanceBranches, stampBranches } from "../devices/branch";
import { balanceControlledCurrents, stampControlledCurrents } from "../devices/controlled-current";
import { balanceCurrentSources } from "../devices/current-source";
import { evaluateDiodes, resetDiodes } from "../devices/diode";
import { evaluateFilaments } from "../devices/filament";
import { balanceOhmic, stampOhmic } from "../devices/ohmic";
import { evaluateRegulators, resetRegulators } from "../devices/regulator";
import type { DeviceTables } from "../tables";
import { allocateFactor, type NumericFactor, refactor, solveFactored } from "./factor";
import { createEvaluation, type Evaluation } from "./iterate";
import { choosePivotOrder } from "./ordering";
import type { Pattern } from "./pattern";
import { analyse } from "./symbolic";

/** A network ready for Newton's method: tables, matrix, factorisation. All arrays are allocated once. */
export interface NewtonSystem {
  readonly pattern: Pattern;
  readonly tables: DeviceTables;
  readonly x: Evaluation;
  readonly step: Float64Array;
  /** Leak to ground per node, siemens, and its places in the matrix: diagonal, ground column. */
  readonly leak: Float64Array;
  readonly leakEntry: Int32Array;
  /** Jacobian of everything linear. */
  readonly linear: Float64Array;
  readonly isLinear: boolean;
  factor: NumericFactor | undefined;
  /** True while `factor` holds the factors of the current linear matrix. */
  factorIsCurrent: boolean;
  /** Further leak at every node (gmin stepping), siemens. */
  shunt: number;
  /** Scale of every independent source (source stepping). */
  drive: number;
}

export function createNewtonSystem(pattern: Pattern, tables: DeviceTables): NewtonSystem {
  const { nodeCount, size, rows, columns } = pattern;
  const leakEntry = new Int32Array(2 * nodeCount);
  for (let entry = 1; entry < rows.length; entry++) {
    const row = rows[entry];
    if (row >= nodeCount) continue;
    if (columns[entry] === row) leakEntry[2 * row] = entry;
    if (columns[entry] === size) leakEntry[2 * row + 1] = entry;
  }
  return {
    pattern,
    tables,
    x: createEvaluation(pattern),
    step: new Float64Array(size + 1),
    leak: new Float64Array(nodeCount),
    leakEntry,
    linear: new Float64Array(rows.length),
    isLinear: tables.diode.count + tables.filament.count + tables.regulator.count === 0,
    factor: undefined,
    factorIsCurrent: false,
    shunt: 0,
    drive: 1,
  };
}

/** Forgets the last solution. */
export function resetToCold(system: NewtonSystem): void {
  system.x.high.fill(0);
  system.x.low.fill(0);
  resetDiodes(system.tables.diode);
  resetRegulators(system.tables.regulator);
}

/** The present solution with all that the devices remember of it. */
export const saveStart = ({ x, tables }: NewtonSystem): StartingPoint => ({
  high: x.high.slice(),
  low: x.low.slice(),
  junctions: tables.diode.last.slice(),
  drives: tables.regulator.last.slice(),
});

/** Goes back to a solution of this system. */
export function resetTo(system: NewtonSystem, start: StartingPoint): void {
  if (start.high.length !== system.x.high.length)
    throw new Error("a starting point belongs to another circuit");
  system.x.high.set(start.high);
  system.x.low.set(start.low);
  system.tables.diode.last.set(start.junctions);
  system.tables.regulator.last.set(start.drives);
}

/** Rebuilds the linear part of the Jacobian; call after any change of a number. */
export function stampLinear(system: NewtonSystem): void {
  const { linear, tables, leak, leakEntry, shunt } = system;
  linear.fill(0);
  stampOhmic(tables.ohmic, linear);
  stampBranches(tables.branch, linear);
  stampControlledCurrents(tables.controlled, linear);
  for (let node = 0; node < leak.length; node++) {
    const siemens = leak[node] + shunt;
    linear[leakEntry[2 * node]] += siemens;
    linear[leakEntry[2 * node + 1]] -= siemens;
  }
  system.factorIsCurrent = false;
}

/** Fills residual, throughput and Jacobian at the iterate; returns how many devices were limited. */
export function evaluate(system: NewtonSystem, limit: boolean): number {
  const { x, tables, drive, leak, shunt } = system;
  x.residual.fill(0);
  x.throughput.fill(0);
  x.jacobian.set(system.linear);
  balanceOhmic(tables.ohmic, x, drive);
  balanceCurrentSources(tables.current, x, drive);
  balanceBranches(tables.branch, x, drive);
  balanceControlledCurrents(tables.controlled, x);
  for (let node = 0; node < leak.length; node++) {
    const amps = (leak[node] + shunt) * x.high[node];
    x.residual[node] += amps;
    x.throughput[node] += Math.abs(amps);
  }
  evaluateFilaments(tables.filament, x);
  return evaluateDiodes(tables.diode, x, limit) + evaluateRegulators(tables.regulator, x, limit);
}

/** Chooses a pivot order for the Jacobian as it stands. Returns the row that has no pivot, or −1. */
export function reorder(system: NewtonSystem): number {
  const outcome = choosePivotOrder(system.pattern, system.x.jacobian);
  if (!outcome.ok) return outcome.singularRow;
  system.factor = allocateFactor(analyse(system.pattern, outcome.order));
  system.factorIsCurrent = false;
  return -1;
}

/** Solves Jacobian · step = residual into `step`. Returns the row that has no pivot, or −1. */
export function solveStep(system: NewtonSystem): number {
  const { x, step } = system;
  const fresh = system.factor === undefined;
  if (fresh) {
    const row = reorder(system);
    if (row >= 0) return row;
  }
  if (system.factor && !(system.isLinear && system.factorIsCurrent)) {
    let row = refactor(system.factor, x.jacobian);
    if (row >= 0 && !fresh) {
      // The old order met a zero pivot at the new values; choose again with these.
      row = reorder(system);
      if (row < 0) row = refactor(system.factor, x.jacobian);
    }
    if (row >= 0) return row;
    system.factorIsCurrent = true;
  }
  if (!system.factor) throw new Error("A factorisation exists once a pivot order was found.");
  solveFactored(system.factor, x.residual, step);
  return -1;
}
