import type { SolveOptions } from "./circuit";
import { iterate, type Outcome, stepShunt, stepSources } from "./kernel/newton";
import { type NewtonSystem, resetTo, resetToCold } from "./kernel/newton-system";

/** Newton from the given or the last solution, from nothing, then by gmin stepping, then by source stepping. */
export function solve(system: NewtonSystem, hasSolution: boolean, options: SolveOptions): Outcome {
  const { maxIterations = 60, shuntSteps = 24, sourceSteps = 20, warmStart = true, startFrom } = options;
  const attempts: (() => Outcome)[] = [];
  if (startFrom) {
    attempts.push(() => {
      resetTo(system, startFrom);
      return iterate(system, maxIterations);
    });
  } else if (warmStart && hasSolution) attempts.push(() => iterate(system, maxIterations));
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
