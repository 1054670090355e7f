import type { SolveOptions } from "./circuit";
import { iterate, type Outcome, stepShunt, stepSources } from "./kernel/newton";
import { type NewtonSystem, resetTo, resetToCold } from "./kernel/newton-system";

/** Newton from the given or the last solution, from nothing, then by gmin stepping, then by source stepping. */
export function solve(system: NewtonSystem, hasSolution: boolean, options: SolveOptions): Outcome {
  const { maxIterations = 60, shuntSteps = 24, sourceSteps = 20, warmStart = true, startFrom } = options;
  let iterations = 0;
  if (startFrom || (warmStart && hasSolution)) {
    if (startFrom) resetTo(system, startFrom);
    const outcome = iterate(system, maxIterations);
    if (isFinal(outcome, system)) return outcome;
    iterations += outcome.iterations;
  }
  const attempts: (() => Outcome)[] = [
    () => {
      resetToCold(system);
      return iterate(system, maxIterations);
    },
  ];
  if (shuntSteps > 0) attempts.push(() => stepShunt(system, maxIterations, shuntSteps));
  if (sourceSteps > 0) attempts.push(() => stepSources(system, maxIterations, sourceSteps));

  let last: Outcome = { kind: "stuck", iterations: 0 };
  for (const attempt of attempts) {
    last = attempt();
    iterations += last.iterations;
    if (isFinal(last, system)) break;
  }
  return { ...last, iterations };
}

/** No continuation helps a linear network that has no single answer. */
const isFinal = ({ kind }: Outcome, system: NewtonSystem): boolean =>
  kind === "converged" || (kind === "singular" && system.isLinear);
