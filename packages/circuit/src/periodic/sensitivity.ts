import { solveFactored } from "../kernel/factor";
import { evaluate, factorise, type NewtonSystem, requireFactor } from "../kernel/newton-system";
import type { ChargeTracker } from "../transient/charge-tracker";
import { method } from "../transient/integrator";
import { gatherCharges, scatterRates } from "../transient/stored-rows";

/**
 * How the charges at a moment depend on those at the start, by the chain rule through every stage: with the equations of
 * a stage f(x) + rate·q(x) + history = 0, a change of the history moves x by −(∂f/∂x + rate·∂q/∂x)⁻¹ times it. That
 * changes of state happen at times that depend on the charges is left out.
 */
export interface Sensitivity extends ChargeTracker {
  /** Starts with each of the chosen charges depending on itself alone. */
  reset(): void;
  /** ∂(charge `row` now) / ∂(charge `column` at the start), places in the choice. */
  at(row: number, column: number): number;
}

/** `slots`: the charges chosen. */
export function createSensitivity(system: NewtonSystem, slots: Int32Array): Sensitivity {
  const count = system.tables.slots;
  const columns = slots.length;
  const matrix = () => Array.from({ length: columns }, () => new Float64Array(count));
  let charges = matrix();
  let next = matrix();
  const before = matrix();
  const rates = method.nodes.map(matrix);
  const history = new Float64Array(count);
  const rows = new Float64Array(system.pattern.size + 1);
  const shift = new Float64Array(system.pattern.size + 1);

  /** The factorisation at the solution itself: slopes near enough for a correction would not do here. */
  const prepare = (): void => {
    system.x.isRefreshing = true;
    evaluate(system);
    factorise(system);
  };
  const respond = (into: Float64Array): void => {
    rows.fill(0);
    scatterRates(system, history, rows);
    solveFactored(requireFactor(system), rows, shift);
    for (let i = 0; i < shift.length; i++) shift[i] = -shift[i];
    shift[system.pattern.size] = 0;
    gatherCharges(system, shift, into);
  };

  return {
    reset() {
      for (const [column, slot] of slots.entries()) charges[column].fill(0)[slot] = 1;
    },
    at: (row, column) => charges[column][slots[row]],
    jumped(which, rate) {
      prepare();
      if (which === 0) for (const [column, each] of charges.entries()) before[column].set(each);
      for (let column = 0; column < columns; column++) {
        const from = which === 0 ? charges[column] : next[column];
        for (let k = 0; k < count; k++) history[k] = -rate * from[k];
        const to = which === 0 ? next[column] : charges[column];
        respond(to);
        if (which === 0) continue;
        // As the charges themselves: what one short step moved beyond the second.
        for (let k = 0; k < count; k++) {
          rates[0][column][k] = rate * (to[k] - from[k]);
          to[k] = 2 * from[k] - to[k];
        }
      }
    },
    undoJump() {
      for (const [column, each] of before.entries()) charges[column].set(each);
    },
    solvedStage(stage, stepSeconds, rate) {
      prepare();
      const weights = method.weights[stage];
      for (let column = 0; column < columns; column++) {
        history.set(charges[column]);
        for (let j = 0; j < stage; j++) {
          const part = stepSeconds * weights[j];
          const earlier = rates[j][column];
          for (let k = 0; k < count; k++) history[k] += part * earlier[k];
        }
        for (let k = 0; k < count; k++) history[k] *= -rate;
        const to = next[column];
        respond(to);
        const own = rates[stage][column];
        for (let k = 0; k < count; k++) own[k] = rate * to[k] + history[k];
      }
    },
    accepted() {
      [charges, next] = [next, charges];
      const last = method.stages - 1;
      [rates[0], rates[last]] = [rates[last], rates[0]];
    },
  };
}
