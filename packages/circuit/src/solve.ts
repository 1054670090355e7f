import { iterate, type Outcome, stepShunt, stepSources } from "./kernel/newton";
import { type NewtonSystem, resetToCold } from "./kernel/newton-system";

/** Limits of one solve. Every one of them is a count of Newton iterations or of continuation steps. */
export interface SolveOptions {
  /** Newton iterations of each attempt; default 60. */
  readonly maxIterations?: number;
  /** Steps of the leak that fades away, tried second; 0 leaves this out; default 24. */
  readonly shuntSteps?: number;
  /** First number of steps in which the sources are brought up, tried last; 0 leaves this out; default 20. */
  readonly sourceSteps?: number;
  /** Start from the last solution of this circuit; default true. */
  readonly warmStart?: boolean;
}

/** Newton from the last solution, from nothing, then by gmin stepping, then by source stepping. */
export function solve(system: NewtonSystem, hasSolution: boolean, options: SolveOptions): Outcome {
  const { maxIterations = 60, shuntSteps = 24, sourceSteps = 20, warmStart = true } = options;
  const attempts: (() => Outcome)[] = [];
  if (warmStart && hasSolution) attempts.push(() => iterate(system, maxIterations));
  attempts.push(() => {
    resetToCold(system);
    return iterate(system, maxIterations);
  });
  if (shuntSteps > 0) attempts.push(() => stepShunt(system, maxIterations, shuntSteps));
  if (sourceSteps > 0) attempts.push(() => stepSources(system, maxIterations, sourceSteps));

  let iterations = 0;
  let last: Outcome = { kind: "stuck", iterations: 0 };
  for (const attempt of attempts) {
    last = attempt();
    iterations += last.iterations;
    // No continuation helps a linear network that has no single answer.
    if (last.kind === "converged" || (last.kind === "singular" && system.isLinear)) break;
  }
  return { ...last, iterations };
}
