import type { SolveOptions } from "./circuit";
import { iterate, type Outcome, stepShunt, stepSources } from "./kernel/newton";
import { type NewtonSystem, resetTo, resetToCold, returnToFirstOrder } from "./kernel/newton-system";

const defaults = { maxIterations: 60, shuntSteps: 24, sourceSteps: 20, warmStart: true };

/**
 * Newton from the given or the last solution, from nothing, then by gmin stepping, then by source stepping. `isAtRest`
 * says that flows and residual are those of the last solution with the present numbers.
 */
export function solve(
  system: NewtonSystem,
  hasSolution: boolean,
  isAtRest: boolean,
  options: SolveOptions,
): Outcome {
  const maxIterations = options.maxIterations ?? defaults.maxIterations;
  const { startFrom } = options;
  let spent = 0;
  if (startFrom || (hasSolution && (options.warmStart ?? defaults.warmStart))) {
    if (startFrom) resetTo(system, startFrom);
    const outcome = iterate(system, maxIterations, isAtRest && !startFrom);
    if (isFinal(outcome, system)) return outcome;
    spent = system.iterations;
    // The order of elimination was chosen at other values; it may be what failed.
    system.factor = undefined;
  } else returnToFirstOrder(system);
  return solveFromNothing(system, maxIterations, options, spent);
}

function solveFromNothing(
  system: NewtonSystem,
  maxIterations: number,
  options: SolveOptions,
  spentBefore: number,
): Outcome {
  const { shuntSteps = defaults.shuntSteps, sourceSteps = defaults.sourceSteps } = options;
  const attempts: (() => Outcome)[] = [
    () => {
      resetToCold(system);
      system.x.isRefreshing = true;
      return iterate(system, maxIterations);
    },
  ];
  if (shuntSteps > 0) attempts.push(() => stepShunt(system, maxIterations, shuntSteps));
  if (sourceSteps > 0) attempts.push(() => stepSources(system, maxIterations, sourceSteps));

  let spent = spentBefore;
  let last: Outcome = "stuck";
  for (const attempt of attempts) {
    last = attempt();
    spent += system.iterations;
    if (isFinal(last, system)) break;
  }
  system.iterations = spent;
  return last;
}

/** No continuation helps a linear network that has no single answer. */
const isFinal = (outcome: Outcome, system: NewtonSystem): boolean =>
  outcome === "converged" || (outcome === "singular" && system.tables.isLinear);
