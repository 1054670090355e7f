import { evaluate, invalidate, type NewtonSystem, reorder, resetToCold, solveStep } from "./newton-system";

/** How a search ended; iterations and the singular row are left in the system, so that success allocates nothing. */
export type Outcome = "converged" | "singular" | "stuck";

/** A step no larger than this part of its unknown, plus a small one, ends the iteration if the residual agrees. */
const relativeStep = 1e-7;
/** In volts of a node, and in amps of a branch. */
const voltStep = 1e-9;
const ampStep = 1e-12;
/** A residual no larger than this part of the row's throughput … */
const relativeResidual = 1e-9;
/** … plus 1 fA (1 fV for a branch). */
const absoluteResidual = 1e-15;
/**
 * From this iteration on, steps may also be what the last digits of large currents leave over: 400 A in a loop that only
 * megohms tie to the rest move it by microvolts at every step, however exact it is.
 */
const lateIteration = 8;
const rounding = 8 * Number.EPSILON;
/** What moves even a node that hangs on a leak of 1e-12 S by no more than `voltStep`. */
const negligible = 1e-21;

/**
 * Newton's method on the Kirchhoff residual. Because each step solves for what is left over at the present iterate,
 * the steps also refine away the rounding errors of the factorisation, in linear networks too. With `isAtRest` the
 * residual is known to be that of the iterate already.
 */
export function iterate(system: NewtonSystem, maxIterations: number, isAtRest = false): Outcome {
  let wasSmall = false;
  for (system.iterations = 0; ; system.iterations++) {
    const isLate = system.iterations >= lateIteration;
    system.x.isMeasuring = wasSmall || isLate;
    const limited = isAtRest && system.iterations === 0 ? 0 : evaluate(system);
    if (limited === 0 && ((wasSmall && isBalanced(system)) || (isLate && isExact(system))))
      return "converged";
    if (system.iterations >= maxIterations) return giveUp(system);
    const row = solveStep(system);
    if (row >= 0) {
      system.singularRow = row;
      system.worstRow = row;
      return "singular";
    }
    wasSmall = takeStep(system);
    if (!wasSmall && !hasFiniteIterate(system)) return giveUp(system);
  }
}

/**
 * Moves the iterate; true when no unknown moved far. The pair of each unknown is renormalised by an error-free sum
 * (D. E. Knuth, TAOCP vol. 2, 4.2.2).
 */
function takeStep(system: NewtonSystem): boolean {
  const { nodeCount, size } = system.pattern;
  system.tally.operations += 11 * size;
  let large = moveUnknowns(system, 0, nodeCount, voltStep) + moveUnknowns(system, nodeCount, size, ampStep);
  // The internal unknowns of devices have moved with the branches; they are judged by tolerances of their own.
  const { step, tables, x } = system;
  for (const { law, unknowns } of tables.law.devices) {
    for (let k = 0; k < unknowns.length; k++) {
      const i = unknowns[k];
      const move = Math.abs(step[i]);
      const allowed = relativeStep * Math.abs(x.high[i]);
      large += Number(!(move <= allowed + law.internals[k].tolerance)) - Number(!(move <= allowed + ampStep));
    }
  }
  return large === 0;
}

/** Moves unknowns first … end − 1 by the step and counts those that moved far. */
function moveUnknowns(system: NewtonSystem, first: number, end: number, smallStep: number): number {
  const { step } = system;
  const { high, low } = system.x;
  let large = 0;
  for (let i = first; i < end; i++) {
    const before = high[i];
    const move = step[i];
    const add = low[i] - move;
    const sum = before + add;
    const part = sum - before;
    high[i] = sum;
    low[i] = before - (sum - part) + (add - part);
    if (!(Math.abs(move) <= relativeStep * Math.abs(sum) + smallStep)) large++;
  }
  return large;
}

function hasFiniteIterate(system: NewtonSystem): boolean {
  const { high } = system.x;
  for (let i = 0; i < high.length; i++) if (!Number.isFinite(high[i])) return false;
  return true;
}

function isBalanced(system: NewtonSystem): boolean {
  const { residual, throughput } = system.x;
  for (let row = 0; row < system.pattern.size; row++) {
    // An infinite yardstick would find an infinite residual good enough.
    if (throughput[row] === Number.POSITIVE_INFINITY) return false;
    if (!(Math.abs(residual[row]) <= relativeResidual * throughput[row] + absoluteResidual)) return false;
  }
  return true;
}

/** Whether nothing but rounding is left over in any row. */
function isExact({ pattern, x: { residual, throughput } }: NewtonSystem): boolean {
  for (let row = 0; row < pattern.size; row++) {
    if (!(Math.abs(residual[row]) <= rounding * throughput[row] + negligible)) return false;
  }
  return true;
}

/** Leaves in the system which row hurts most where the search ended. */
function giveUp(system: NewtonSystem): Outcome {
  system.worstRow = worstRow(system);
  return "stuck";
}

/** The row whose residual is worst against its throughput: where an unconverged network hurts most. */
export function worstRow(system: NewtonSystem): number {
  system.x.isMeasuring = true;
  evaluate(system);
  const { residual, throughput } = system.x;
  let worst = 0;
  let most = -1;
  for (let row = 0; row < system.pattern.size; row++) {
    const part = Math.abs(residual[row]) / (throughput[row] + absoluteResidual);
    if (!(part <= most)) {
      most = part;
      worst = row;
    }
  }
  return worst;
}

/**
 * Continuation in a leak at every node: large at first, so that the network is nearly linear, then smaller by
 * `steps` equal factors, and at last none.
 */
export function stepShunt(system: NewtonSystem, maxIterations: number, steps: number): Outcome {
  const [first, last] = [1e-1, 1e-13];
  let iterations = 0;
  let outcome: Outcome = "stuck";
  resetToCold(system);
  for (let step = 0; step <= steps + 1; step++) {
    system.matrix.shunt = step > steps ? 0 : first * (last / first) ** (step / steps);
    invalidate(system);
    if (step === 0) {
      evaluate(system);
      reorder(system);
    }
    outcome = iterate(system, maxIterations);
    iterations += system.iterations;
    if (outcome !== "converged") break;
  }
  if (system.matrix.shunt !== 0) {
    system.matrix.shunt = 0;
    invalidate(system);
  }
  system.iterations = iterations;
  return outcome;
}

/** Continuation in the strength of all independent sources, from none to full, with a step that adapts. */
export function stepSources(system: NewtonSystem, maxIterations: number, steps: number): Outcome {
  let iterations = 0;
  let reached = 0;
  let stride = 1 / steps;
  let outcome: Outcome = "stuck";
  resetToCold(system);
  const saved = { high: system.x.high.slice(), low: system.x.low.slice() };
  for (let attempt = 0; attempt < 20 * steps && stride >= 1e-9; attempt++) {
    system.drive = Math.min(1, reached + stride);
    outcome = iterate(system, maxIterations);
    iterations += system.iterations;
    if (outcome === "converged") {
      if (system.drive === 1) break;
      reached = system.drive;
      saved.high.set(system.x.high);
      saved.low.set(system.x.low);
      stride *= 2;
    } else {
      stride /= 4;
      system.x.high.set(saved.high);
      system.x.low.set(saved.low);
    }
  }
  const isComplete = outcome === "converged" && system.drive === 1;
  system.drive = 1;
  system.iterations = iterations;
  return isComplete ? "converged" : "stuck";
}
