import type { Thevenin } from "./circuit";
import { solveFactored } from "./kernel/factor";
import { across } from "./kernel/iterate";
import { evaluate, type NewtonSystem, requireFactor, solveStep } from "./kernel/newton-system";
import { correctStep } from "./kernel/ports";

/**
 * Thévenin's equivalent between two rows of a solved network, by its Jacobian J alone: with one ampere pushed in at
 * `from` and drawn at `to`, J·z = u, and the source resistance is uᵀ·z. Undefined when the Jacobian has no inverse; the
 * row to blame is then left in the system.
 */
export function findThevenin(
  system: NewtonSystem,
  from: number,
  to: number,
  isTied: boolean,
): Thevenin | undefined {
  const { x } = system;
  const openVolts = across(x, from, to);
  if (!isTied) return { openVolts, ohms: Number.POSITIVE_INFINITY };
  if (from === to) return { openVolts: 0, ohms: 0 };
  // With the slopes as they are here, not as they were held on the way.
  x.isRefreshing = true;
  evaluate(system);
  const row = solveStep(system);
  if (row >= 0) {
    system.singularRow = row;
    return undefined;
  }
  const factor = requireFactor(system);
  const push = new Float64Array(x.residual.length);
  push[from] += 1;
  push[to] -= 1;
  const rise = new Float64Array(x.residual.length);
  solveFactored(factor, push, rise);
  if (system.ports) correctStep(system.ports, factor, rise, x.throughput);
  return { openVolts, ohms: rise[from] - rise[to] };
}
