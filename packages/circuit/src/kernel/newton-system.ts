import type { StartingPoint } from "../circuit";
import { measureBranches, stampBranches } from "../devices/branch";
import { stampCapacitors } from "../devices/capacitor";
import { stampControlledCurrents } from "../devices/controlled-current";
import { resetDiodes } from "../devices/diode";
import { measureLaws, resetLaws, stampLaws } from "../devices/law-table";
import { resetRegulators, stampRegulators } from "../devices/regulator";
import { resetCurves } from "../devices/table";
import type { DeviceTables } from "../tables";
import { assemble } from "./assemble";
import {
  allocateFactor,
  type MatrixValues,
  type NumericFactor,
  refactor,
  solveFactored,
  type Tally,
} from "./factor";
import { balanceFlows, type Flows, measureFlows } from "./flows";
import { createEvaluation, type Evaluation } from "./iterate";
import { orderByLevel } from "./level-order";
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
  /** Leak to ground per node, siemens. */
  readonly leak: Float64Array;
  /**
   * The Jacobian in the shares that the factorisation gathers. Its leak is that of the network without its ports, for
   * it must not be singular alone; its shunt is a further leak at every node (gmin stepping).
   */
  readonly matrix: MatrixValues & { shunt: number };
  /** What linear devices that are not edges add to the pattern's entries. */
  readonly linear: Float64Array;
  /** False when a number behind `linear` has changed. */
  linearIsCurrent: boolean;
  factor: NumericFactor | undefined;
  /** The factorisation in the order of elimination chosen first: the one that answers meant to be repeatable use. */
  firstFactor: NumericFactor | undefined;
  /** Scale of every independent source (source stepping). */
  drive: number;
  /** Devices laid across the network from outside. */
  ports: Ports | undefined;
  readonly tally: Tally;
  /** Floating-point operations of one evaluation. */
  readonly evaluationOperations: number;
  /** Of the last call of `iterate` or `solve`. */
  iterations: number;
  /** Row that had no pivot, of the last outcome "singular". */
  singularRow: number;
  /** Row whose equation was farthest from fulfilled, of the last outcome "stuck". */
  worstRow: number;
}

export function createNewtonSystem(pattern: Pattern, flows: Flows, tables: DeviceTables): NewtonSystem {
  const { nodeCount, size, rows } = pattern;
  const x = createEvaluation(pattern, flows, tables.slots);
  return {
    pattern,
    flows,
    tables,
    passes: listPasses(tables),
    x,
    step: new Float64Array(size + 1),
    leak: new Float64Array(nodeCount),
    matrix: { siemens: tables.siemens, stamped: x.jacobian, leak: new Float64Array(nodeCount), shunt: 0 },
    linear: new Float64Array(rows.length),
    linearIsCurrent: false,
    factor: undefined,
    firstFactor: undefined,
    drive: 1,
    ports: undefined,
    tally: { operations: 0 },
    evaluationOperations: countEvaluation(tables, flows, nodeCount),
    iterations: 0,
    singularRow: -1,
    worstRow: -1,
  };
}

/**
 * Additions, multiplications, divisions and exponentials of one evaluation at the least: a junction is taken to go along
 * its tangent, and what device laws do is not counted.
 */
function countEvaluation(tables: DeviceTables, flows: Flows, nodeCount: number): number {
  const { ohmic, diode, filament, curve, branch, controlled, regulator } = tables;
  const perDevice =
    12 * ohmic.count +
    6 * diode.count +
    14 * filament.count +
    14 * curve.count +
    20 * branch.count +
    7 * controlled.count +
    40 * regulator.count;
  return perDevice + 2 * flows.count + 3 * nodeCount;
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

/** Takes up the order of elimination that was chosen first, so that answers do not depend on what was solved since. */
export function returnToFirstOrder(system: NewtonSystem): void {
  if (system.factor === system.firstFactor) return;
  system.factor = system.firstFactor;
  system.x.stale.fill(1);
}

/**
 * Goes back to a solution of this system, and so that what follows depends on that and on the numbers alone: curves are
 * linearised anew and the order of elimination is the first.
 */
export function resetTo(system: NewtonSystem, start: Omit<StartingPoint, "states">): void {
  if (start.high.length !== system.x.high.length)
    throw new Error("a starting point belongs to another circuit");
  system.x.isRefreshing = true;
  returnToFirstOrder(system);
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
  const { linear, tables, x } = system;
  linear.fill(0);
  stampCapacitors(tables.capacitor, linear, x.rate);
  stampBranches(tables.branch, linear, x.rate);
  stampControlledCurrents(tables.controlled, linear);
  system.linearIsCurrent = true;
}

/** Puts the stamped part of the Jacobian together where a slope or a number has changed. */
function stampJacobian(system: NewtonSystem): void {
  const { x, tables } = system;
  if (system.linearIsCurrent && x.jacobianIsCurrent) return;
  if (!system.linearIsCurrent) stampLinear(system);
  x.jacobian.set(system.linear);
  stampRegulators(tables.regulator, x.jacobian);
  stampLaws(tables.law, x.jacobian);
  x.jacobianIsCurrent = true;
}

/** Fills residual, slopes and, while measuring, throughput at the iterate; returns how many devices were limited. */
export function evaluate(system: NewtonSystem): number {
  const { x, passes, drive } = system;
  system.tally.operations += system.evaluationOperations;
  x.residual.fill(0);
  if (x.isMeasuring) x.throughput.fill(0);
  let limited = 0;
  for (let i = 0; i < passes.length; i++) limited += passes[i](x, drive);
  x.isRefreshing = false;
  balanceFlows(system.flows, system.tables.ohmic.count, x.amps, x.residual);
  balanceLeaks(system);
  if (system.ports) limited += evaluatePorts(system.ports, x, drive);
  if (x.isMeasuring) measure(system);
  return limited;
}

function balanceLeaks({ x, leak, matrix: { shunt } }: NewtonSystem): void {
  const { residual, high } = x;
  for (let node = 0; node < leak.length; node++) residual[node] += (leak[node] + shunt) * high[node];
}

/** Adds what the passes have not added to the throughput by themselves. */
function measure(system: NewtonSystem): void {
  const { x, tables, leak, ports } = system;
  const { throughput, high } = x;
  const { shunt } = system.matrix;
  measureFlows(system.flows, tables.ohmic.count, x.amps, throughput);
  if (ports) measureFlows(ports.flows, ports.tables.ohmic.count, ports.x.amps, throughput);
  measureBranches(tables.branch, x, throughput);
  measureLaws(tables.law, x, throughput);
  for (let node = 0; node < leak.length; node++)
    throughput[node] += Math.abs((leak[node] + shunt) * high[node]);
}

/** Chooses a pivot order for the Jacobian as it stands. Returns the row that has no pivot, or −1. */
export function reorder(system: NewtonSystem): number {
  stampJacobian(system);
  const outcome = choosePivotOrder(system.pattern, assemble(system.pattern, system.matrix));
  if (!outcome.ok) return outcome.singularRow;
  const order = orderByLevel(analyse(system.pattern, outcome.order));
  system.factor = allocateFactor(analyse(system.pattern, order), system.tally);
  system.firstFactor ??= system.factor;
  system.x.stale.fill(1);
  return -1;
}

/** Solves Jacobian · step = residual into `step`. Returns the row that has no pivot, or −1. */
export function solveStep(system: NewtonSystem): number {
  const { x, step } = system;
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
  if (system.ports) correctStep(system.ports, factor, step, x.throughput);
  return -1;
}

/** Brings the factorisation up to date. Returns the row that has no pivot, or −1. */
export function factorise(system: NewtonSystem): number {
  stampJacobian(system);
  const { x, ports } = system;
  if (ports && x.stale.includes(1)) ports.columnsAreCurrent = false;
  return refactor(requireFactor(system), system.matrix, x.stale);
}

export function requireFactor(system: NewtonSystem): NumericFactor {
  if (!system.factor) throw new Error("A factorisation exists once a pivot order was found.");
  return system.factor;
}

/** Largest sum of currents at any node. */
export function largestResidual({ pattern, x }: NewtonSystem): number {
  let most = 0;
  for (let node = 0; node < pattern.nodeCount; node++) most = Math.max(most, Math.abs(x.residual[node]));
  return most;
}
