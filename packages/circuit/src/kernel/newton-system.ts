import type { StartingPoint } from "../circuit";
import { measureBranches, stampBranches } from "../devices/branch";
import { stampCapacitors } from "../devices/capacitor";
import { stampControlledCurrents } from "../devices/controlled-current";
import { resetDiodes } from "../devices/diode";
import { measureLaws, resetLaws, stampLaws } from "../devices/law-table";
import { resetRegulators, stampRegulators } from "../devices/regulator";
import { resetCurves } from "../devices/table";
import { stampAll } from "../devices/two-terminal";
import type { DeviceTables } from "../tables";
import { allocateFactor, type NumericFactor, refactor, solveFactored } from "./factor";
import { balanceFlows, type Flows, measureFlows } from "./flows";
import { createEvaluation, type Evaluation } from "./iterate";
import { choosePivotOrder } from "./ordering";
import { listPasses, type Pass } from "./passes";
import type { Pattern } from "./pattern";
import { correctStep, evaluatePorts, type Ports, resetPorts } from "./ports";
import { analyse } from "./symbolic";

/** A network ready for Newton's method: tables, matrix, factorisation. All arrays are allocated once. */
export interface NewtonSystem {
  readonly pattern: Pattern;
  readonly flows: Flows;
  readonly tables: DeviceTables;
  readonly passes: readonly Pass[];
  readonly x: Evaluation;
  readonly step: Float64Array;
  /** By row, the sum of the absolute terms: the yardstick for its residual. */
  readonly throughput: Float64Array;
  /** By unknown, a Newton step no larger than this is small. */
  readonly smallStep: Float64Array;
  /** Leak to ground per node, siemens. */
  readonly leak: Float64Array;
  /** The leak that the matrix has: that of the network without its ports, for it must not be singular alone. */
  readonly stampedLeak: Float64Array;
  /** Places of a leak in the matrix: diagonal, ground column. */
  readonly leakEntry: Int32Array;
  /** Jacobian of everything linear. */
  readonly linear: Float64Array;
  /** False when a number behind `linear` has changed. */
  linearIsCurrent: boolean;
  factor: NumericFactor | undefined;
  /** The factorisation in the order of elimination chosen first: the one that answers meant to be repeatable use. */
  firstFactor: NumericFactor | undefined;
  /** Further leak at every node (gmin stepping), siemens. */
  shunt: number;
  /** Scale of every independent source (source stepping). */
  drive: number;
  /** Devices laid across the network from outside. */
  ports: Ports | undefined;
  /** Of the last call of `iterate` or `solve`. */
  iterations: number;
  /** Row that had no pivot, of the last outcome "singular". */
  singularRow: number;
}

/** A step no larger than this in volts of a node, or amps of a branch, is small. */
const voltStep = 1e-9;
const ampStep = 1e-12;

export function createNewtonSystem(pattern: Pattern, flows: Flows, tables: DeviceTables): NewtonSystem {
  const { nodeCount, size, rows, columns } = pattern;
  const leakEntry = new Int32Array(2 * nodeCount);
  for (let entry = 1; entry < rows.length; entry++) {
    const row = rows[entry];
    if (row >= nodeCount) continue;
    if (columns[entry] === row) leakEntry[2 * row] = entry;
    if (columns[entry] === size) leakEntry[2 * row + 1] = entry;
  }
  const smallStep = new Float64Array(size).fill(ampStep).fill(voltStep, 0, nodeCount);
  for (const { law, unknowns } of tables.law.devices)
    law.internals.forEach(({ tolerance }, k) => {
      smallStep[unknowns[k]] = tolerance;
    });
  return {
    pattern,
    flows,
    tables,
    passes: listPasses(tables),
    x: createEvaluation(pattern, flows, tables.slots),
    step: new Float64Array(size + 1),
    throughput: new Float64Array(size + 1),
    smallStep,
    leak: new Float64Array(nodeCount),
    stampedLeak: new Float64Array(nodeCount),
    leakEntry,
    linear: new Float64Array(rows.length),
    linearIsCurrent: false,
    factor: undefined,
    firstFactor: undefined,
    shunt: 0,
    drive: 1,
    ports: undefined,
    iterations: 0,
    singularRow: -1,
  };
}

/** Forgets the last solution. */
export function resetToCold(system: NewtonSystem): void {
  const { x, tables } = system;
  x.high.fill(0);
  x.low.fill(0);
  resetDiodes(tables.diode);
  resetRegulators(tables.regulator);
  resetCurves(tables.curve);
  resetLaws(tables.law, x.high);
  if (system.ports) resetPorts(system.ports);
}

/** The present solution with all that the devices remember of it. */
export const saveStart = ({ x, tables }: NewtonSystem): Omit<StartingPoint, "states"> => ({
  high: x.high.slice(),
  low: x.low.slice(),
  junctions: tables.diode.last.slice(),
  drives: tables.regulator.last.slice(),
  curves: tables.curve.last.slice(),
  laws: tables.law.devices.map((device) => device.last.slice()),
});

/**
 * Goes back to a solution of this system, and so that what follows depends on that and on the numbers alone: curves are
 * linearised anew and the order of elimination is the first.
 */
export function resetTo(system: NewtonSystem, start: Omit<StartingPoint, "states">): void {
  if (start.high.length !== system.x.high.length)
    throw new Error("a starting point belongs to another circuit");
  system.x.isRefreshing = true;
  if (system.factor !== system.firstFactor) {
    system.factor = system.firstFactor;
    system.x.stale.fill(1);
  }
  system.x.high.set(start.high);
  system.x.low.set(start.low);
  system.tables.diode.last.set(start.junctions);
  system.tables.regulator.last.set(start.drives);
  system.tables.curve.last.set(start.curves);
  system.tables.law.devices.forEach((device, i) => {
    device.last.set(start.laws[i]);
  });
  if (system.ports) resetPorts(system.ports);
}

/** Makes everything be stamped and factorised anew; for changes that touch all, such as another rate or shunt. */
export function invalidate(system: NewtonSystem): void {
  system.linearIsCurrent = false;
  system.x.stale.fill(1);
}

/** Rebuilds the linear part of the Jacobian. */
function stampLinear(system: NewtonSystem): void {
  const { linear, tables, stampedLeak, leakEntry, shunt, x } = system;
  linear.fill(0);
  stampAll(tables.ohmic, linear, tables.ohmic.siemens);
  stampCapacitors(tables.capacitor, linear, x.rate);
  stampBranches(tables.branch, linear, x.rate);
  stampControlledCurrents(tables.controlled, linear);
  for (let node = 0; node < stampedLeak.length; node++) {
    const siemens = stampedLeak[node] + shunt;
    if (siemens === 0) continue;
    linear[leakEntry[2 * node]] += siemens;
    linear[leakEntry[2 * node + 1]] -= siemens;
  }
  system.linearIsCurrent = true;
}

/** Puts the Jacobian together where a slope or a number has changed. */
function stampJacobian(system: NewtonSystem): void {
  const { x, tables } = system;
  if (system.linearIsCurrent && x.jacobianIsCurrent) return;
  if (!system.linearIsCurrent) stampLinear(system);
  x.jacobian.set(system.linear);
  stampAll(tables.diode, x.jacobian, tables.diode.held);
  stampAll(tables.filament, x.jacobian, tables.filament.held);
  stampAll(tables.curve, x.jacobian, tables.curve.held);
  stampRegulators(tables.regulator, x.jacobian);
  stampLaws(tables.law, x.jacobian);
  // The bin for what would go into ground's row; places of fill-in take their value from it.
  x.jacobian[0] = 0;
  x.jacobianIsCurrent = true;
}

/** Fills residual and slopes at the iterate; returns how many devices were limited. */
export function evaluate(system: NewtonSystem): number {
  const { x, passes, drive } = system;
  x.residual.fill(0);
  let limited = 0;
  for (let i = 0; i < passes.length; i++) limited += passes[i](x, drive);
  x.isRefreshing = false;
  balanceFlows(system.flows, x.amps, x.residual);
  balanceLeaks(system);
  if (system.ports) limited += evaluatePorts(system.ports, x, drive);
  return limited;
}

function balanceLeaks({ x, leak, shunt }: NewtonSystem): void {
  const { residual, high } = x;
  for (let node = 0; node < leak.length; node++) residual[node] += (leak[node] + shunt) * high[node];
}

/** Fills `throughput` at the last evaluation. */
export function measure(system: NewtonSystem): void {
  const { x, tables, throughput, leak, shunt } = system;
  throughput.fill(0);
  measureFlows(system.flows, x.amps, throughput);
  if (system.ports) measureFlows(system.ports.flows, system.ports.x.amps, throughput);
  measureBranches(tables.branch, x, throughput);
  measureLaws(tables.law, x, throughput);
  for (let node = 0; node < leak.length; node++)
    throughput[node] += Math.abs((leak[node] + shunt) * x.high[node]);
}

/** Chooses a pivot order for the Jacobian as it stands. Returns the row that has no pivot, or −1. */
export function reorder(system: NewtonSystem): number {
  stampJacobian(system);
  const outcome = choosePivotOrder(system.pattern, system.x.jacobian);
  if (!outcome.ok) return outcome.singularRow;
  system.factor = allocateFactor(analyse(system.pattern, outcome.order));
  system.firstFactor ??= system.factor;
  system.x.stale.fill(1);
  return -1;
}

/** Solves Jacobian · step = residual into `step`. Returns the row that has no pivot, or −1. */
export function solveStep(system: NewtonSystem): number {
  const { x, step } = system;
  stampJacobian(system);
  const isFresh = system.factor === undefined;
  if (isFresh) {
    const row = reorder(system);
    if (row >= 0) return row;
  }
  let row = factorise(system);
  if (row >= 0 && !isFresh) {
    // The old order met a zero pivot at the new values; choose again with these.
    row = reorder(system);
    if (row < 0) row = factorise(system);
  }
  if (row >= 0) return row;
  const factor = requireFactor(system);
  solveFactored(factor, x.residual, step);
  // `throughput` is free until the residual is judged.
  if (system.ports) correctStep(system.ports, factor, step, system.throughput);
  return -1;
}

function factorise(system: NewtonSystem): number {
  const { x, ports } = system;
  if (ports && x.stale.includes(1)) ports.columnsAreCurrent = false;
  return refactor(requireFactor(system), x.jacobian, x.stale);
}

export function requireFactor(system: NewtonSystem): NumericFactor {
  if (!system.factor) throw new Error("A factorisation exists once a pivot order was found.");
  return system.factor;
}
