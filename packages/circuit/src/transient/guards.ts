import type { Solver } from "../solver";

/** Guard values of all elements that have any, one after the other. */
export interface GuardWatch {
  /** Reads all guards into `now`; true when one is due. */
  read(): boolean;
  readonly now: Float64Array;
  /** Values where the step began. */
  readonly before: Float64Array;
  /** Makes `now` the values at which the next step begins. */
  settle(): void;
  /** Changes the states that are due; answers the elements changed, by position. */
  enterDue(): readonly number[];
}

export function createGuardWatch(solver: Solver): GuardWatch {
  const { guarded, guardsOf } = solver;
  const count = guarded.reduce((sum, at) => sum + guardsOf(at).length, 0);
  const now = new Float64Array(count);
  const before = new Float64Array(count);
  return {
    now,
    before,
    read() {
      let k = 0;
      let isDue = false;
      for (const at of guarded) {
        for (const { value } of guardsOf(at)) {
          if (value > 0) isDue = true;
          now[k++] = value;
        }
      }
      return isDue;
    },
    settle() {
      before.set(now);
    },
    enterDue() {
      // Found first and entered after, so that all see the same solution.
      const due = guarded.map(solver.dueState);
      return guarded.filter((at, i) => {
        const state = due[i];
        if (state === undefined) return false;
        solver.enterState(at, state);
        return true;
      });
    },
  };
}
