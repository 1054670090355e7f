import { advance } from "./iterate";
import { evaluate, type NewtonSystem, reorder, resetToCold, solveStep, stampLinear } from "./newton-system";

export type Outcome =
  | { readonly kind: "converged"; readonly iterations: number }
  | { readonly kind: "singular"; readonly iterations: number; readonly row: number }
  | { readonly kind: "stuck"; readonly iterations: number };

/** A step no larger than this part of its unknown … */
const relativeStep = 1e-7;
/** … plus this (volts of a node, amps of a branch) ends the iteration if the residual agrees. */
const voltStep = 1e-9;
const ampStep = 1e-12;
/** A residual no larger than this part of the row's throughput … */
const relativeResidual = 1e-9;
/** … plus 1 fA (1 fV for a branch). */
const absoluteResidual = 1e-15;

/**
 * Newton's method on the Kirchhoff residual. Because each step solves for what is left over at the present iterate,
 * the steps also refine away the rounding errors of the factorisation, in linear networks too.
 */
export function iterate(system: NewtonSystem, maxIterations: number): Outcome {
  let smallStep = false;
  for (let done = 0; ; done++) {
    const limited = evaluate(system, true);
    if (smallStep && limited === 0 && isBalanced(system)) return { kind: "converged", iterations: done };
    if (done >= maxIterations) return { kind: "stuck", iterations: done };
    const row = solveStep(system);
    if (row >= 0) return { kind: "singular", iterations: done, row };
    const outcome = takeStep(system);
    if (outcome === "not_finite") return { kind: "stuck", iterations: done };
    smallStep = outcome === "small";
  }
}

function takeStep(system: NewtonSystem): "small" | "large" | "not_finite" {
  const { x, step, pattern } = system;
  const { nodeCount, size } = pattern;
  let small = true;
  for (let i = 0; i < size; i++) {
    advance(x, i, -step[i]);
    const allowed = relativeStep * Math.abs(x.high[i]) + (i < nodeCount ? voltStep : ampStep);
    if (!(Math.abs(step[i]) <= allowed)) small = false;
  }
  if (small) return "small";
  for (let i = 0; i < size; i++) if (!Number.isFinite(x.high[i])) return "not_finite";
  return "large";
}

function isBalanced(system: NewtonSystem): boolean {
  const { residual, throughput } = system.x;
  for (let row = 0; row < system.pattern.size; row++) {
    if (!(Math.abs(residual[row]) <= relativeResidual * throughput[row] + absoluteResidual)) return false;
  }
  return true;
}

/** The row whose residual is worst against its throughput: where an unconverged network hurts most. */
export function worstRow(system: NewtonSystem): number {
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
  resetToCold(system);
  for (let step = 0; step <= steps + 1; step++) {
    system.shunt = step > steps ? 0 : first * (last / first) ** (step / steps);
    stampLinear(system);
    if (step === 0) {
      evaluate(system, true);
      reorder(system);
    }
    const outcome = iterate(system, maxIterations);
    iterations += outcome.iterations;
    if (outcome.kind !== "converged") {
      system.shunt = 0;
      stampLinear(system);
      return { ...outcome, iterations };
    }
  }
  return { kind: "converged", iterations };
}

/** Continuation in the strength of all independent sources, from none to full, with a step that adapts. */
export function stepSources(system: NewtonSystem, maxIterations: number, steps: number): Outcome {
  let iterations = 0;
  let reached = 0;
  let stride = 1 / steps;
  resetToCold(system);
  const saved = { high: system.x.high.slice(), low: system.x.low.slice() };
  for (let attempt = 0; attempt < 20 * steps; attempt++) {
    system.drive = Math.min(1, reached + stride);
    system.factorIsCurrent = false;
    const outcome = iterate(system, maxIterations);
    iterations += outcome.iterations;
    if (outcome.kind === "converged") {
      if (system.drive === 1) return { kind: "converged", iterations };
      reached = system.drive;
      saved.high.set(system.x.high);
      saved.low.set(system.x.low);
      stride *= 2;
    } else {
      stride /= 4;
      system.x.high.set(saved.high);
      system.x.low.set(saved.low);
      if (stride < 1e-9) break;
    }
  }
  system.drive = 1;
  return { kind: "stuck", iterations };
}
