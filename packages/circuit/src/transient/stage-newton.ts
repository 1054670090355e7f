import { evaluate, type NewtonSystem, solveStep } from "../kernel/newton-system";

/** How a stage ended. */
export type StageOutcome = "solved" | "singular" | "stuck";

/** Newton's method on the equations of one stage, to a part of the error that the step may make. */
export interface StageNewton {
  /** By unknown, the error that a step may make there. */
  readonly allowed: Float64Array;
  /** How much the last iterations shrank from one to the next. */
  contraction: number;
  /** Since the beginning. */
  iterations: number;
}

/** What is left of a Newton correction, as a part of the error allowed, when the iteration ends. */
const leftOver = 0.05;
/**
 * What may be left over of the currents at a node, as a part of them and in amps. At the foot of an exponential a
 * correction may be small far from the solution: then the currents tell.
 */
const unbalancedPart = 1e-2;
const unbalancedAmps = 1e-9;
/** … or as a part of what a capacitor would carry if all its charge came anew in this step: rounding. */
const roundedPart = 1e-12;

/**
 * Ends with everything evaluated at the solution, charges and flows too. `isFirst` says that the factorisation is to be
 * a new one: then even in a linear network a second correction has to confirm the first.
 */
export function solveStage(
  system: NewtonSystem,
  newton: StageNewton,
  maxIterations: number,
  isFirst: boolean,
): StageOutcome {
  let before = 0;
  let isClose = false;
  const { isLinear } = system.tables;
  const isExact = isLinear && !isFirst;
  for (let iteration = 0; ; iteration++) {
    system.x.isMeasuring = isClose && !isLinear;
    const limited = evaluate(system);
    if (isClose && limited === 0 && (isLinear || isBalanced(system))) return "solved";
    if (iteration >= maxIterations) return "stuck";
    const row = solveStep(system);
    newton.iterations++;
    if (row >= 0) {
      system.singularRow = row;
      return "singular";
    }
    const size = takeStep(system, newton.allowed);
    if (!Number.isFinite(size)) return "stuck";
    if (iteration > 0) newton.contraction = before > 0 ? Math.min(1, Math.max(1e-3, size / before)) : 1e-3;
    before = size;
    isClose = isExact || size * newton.contraction <= leftOver;
  }
}

function isBalanced(system: NewtonSystem): boolean {
  const { pattern, x } = system;
  const { residual, throughput } = x;
  for (let node = 0; node < pattern.nodeCount; node++) {
    const left = Math.abs(residual[node]);
    if (left <= unbalancedPart * throughput[node] + unbalancedAmps) continue;
    if (!(left <= roundedPart * chargingAmps(system, node))) return false;
  }
  return true;
}

/** The currents of a node's capacitors are differences of these, which are far larger in a short step. */
function chargingAmps({ tables: { capacitor }, x }: NewtonSystem, node: number): number {
  let amps = 0;
  for (let i = 0; i < capacitor.count; i++) {
    if (capacitor.a[i] !== node && capacitor.b[i] !== node) continue;
    amps +=
      capacitor.farads[i] * x.rate * (Math.abs(x.high[capacitor.a[i]]) + Math.abs(x.high[capacitor.b[i]]));
  }
  return amps;
}

/** Moves the iterate as in kernel/newton; answers the largest move as a part of what is allowed there. */
function takeStep({ x, step }: NewtonSystem, allowed: Float64Array): number {
  const { high, low } = x;
  let most = 0;
  for (let i = 0; i < allowed.length; i++) {
    const before = high[i];
    const add = low[i] - step[i];
    const sum = before + add;
    const part = sum - before;
    high[i] = sum;
    low[i] = before - (sum - part) + (add - part);
    const size = Math.abs(step[i]) / allowed[i];
    if (size > most || Number.isNaN(size)) most = size;
  }
  return most;
}
