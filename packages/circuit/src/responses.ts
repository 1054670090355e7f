import { solveFactored } from "./kernel/factor";
import { evaluate, type NewtonSystem, requireFactor, solveStep } from "./kernel/newton-system";
import { correctStep } from "./kernel/ports";

/** How a solved network answers to currents pushed through pairs of its rows. Holds until the next solve or change. */
export interface RowResponses {
  /** Volts by which the row rises for each ampere pushed in at the first row of pair `at` and drawn at its second, Ω. */
  ohms(at: number, row: number): number;
  /**
   * Whether the network with these currents, one for each pair, is where the answers put it: false where a curve bends so
   * much on the way that a solve of its own is needed. Leaves the system there until `back`.
   */
  go(amps: ArrayLike<number>): boolean;
  /** Puts the system back to the solution. */
  back(): void;
}

/** Current that may be left over at a node, as a part of all that meets there: less than any meter shows. */
const bending = 1e-5;
const leastAmps = 1e-12;

/**
 * Solves the Jacobian at the solution for every pair. Undefined when it has no inverse; the row to blame is then left in
 * the system.
 */
export function findResponses(
  system: NewtonSystem,
  pairs: readonly (readonly [from: number, to: number])[],
): RowResponses | undefined {
  const { x } = system;
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
  const columns = pairs.map(([from, to]) => {
    push.fill(0);
    push[from] += 1;
    push[to] -= 1;
    const rise = new Float64Array(x.residual.length);
    solveFactored(factor, push, rise);
    if (system.ports) correctStep(system.ports, factor, rise, x.throughput);
    return rise;
  });
  const rest = { high: x.high.slice(), low: x.low.slice() };
  return {
    ohms: (at, of) => columns[at][of],
    go(amps) {
      x.high.set(rest.high);
      x.low.set(rest.low);
      for (let at = 0; at < columns.length; at++) {
        const amount = amps[at];
        if (amount === 0) continue;
        const column = columns[at];
        for (let i = 0; i < column.length; i++) x.high[i] += amount * column[i];
      }
      x.isMeasuring = true;
      x.isLimiting = false;
      evaluate(system);
      x.isLimiting = true;
      const { residual, throughput } = x;
      for (let at = 0; at < columns.length; at++) {
        residual[pairs[at][0]] -= amps[at];
        residual[pairs[at][1]] += amps[at];
      }
      for (let i = 0; i < system.pattern.size; i++)
        if (!(Math.abs(residual[i]) <= bending * throughput[i] + leastAmps)) return false;
      return true;
    },
    back() {
      x.high.set(rest.high);
      x.low.set(rest.low);
    },
  };
}
