import { type AttemptPolicy, type AttemptScore, countedPercent } from "./attempt-policy";
import { toShown } from "./rounding";

export interface GradebookAssignment {
  readonly id: string;
  readonly title: string;
  /** Share in the class total, relative to the other assignments; 0 is practice that does not count. */
  readonly weight: number;
  readonly policy: AttemptPolicy;
  readonly passMark: number;
  /** After the window has closed an assignment nobody handed in counts as 0. */
  readonly closed: boolean;
}

export interface GradebookLearner {
  readonly id: string;
  readonly name: string;
  readonly email: string;
}

export interface GradebookAttempt extends AttemptScore {
  readonly learner: string;
  readonly assignment: string;
}

export interface GradebookCell {
  readonly assignment: string;
  /** Shown percentage; null while nothing is graded. */
  readonly percent: number | null;
  readonly attempts: number;
  readonly passed: boolean | null;
  /** `missing`: closed and not handed in; it counts as 0. `open`: not handed in yet; it does not count. */
  readonly state: "graded" | "missing" | "open";
}

export interface GradebookRow {
  readonly learner: GradebookLearner;
  readonly cells: readonly GradebookCell[];
  /** Weighted mean of what counts so far, shown; null while nothing counts. */
  readonly total: number | null;
}

export interface GradebookMatrix {
  readonly assignments: readonly GradebookAssignment[];
  readonly rows: readonly GradebookRow[];
  /** Mean of each assignment over the learners it has been graded for, in the order of `assignments`. */
  readonly means: readonly (number | null)[];
  readonly totalMean: number | null;
}

/**
 * The instructor's table: a row for each learner, a cell for each assignment, totals at the end. Totals are formed from
 * unrounded percentages: Σ weight · percent / Σ weight over what is graded or missing.
 * Attempts of unknown learners or assignments are left out (a learner who has left the class).
 */
export function gradebookMatrix(
  learners: readonly GradebookLearner[],
  assignments: readonly GradebookAssignment[],
  attempts: readonly GradebookAttempt[],
): GradebookMatrix {
  const exact = learners.map((learner) => ({
    learner,
    entries: assignments.map((assignment) => {
      const own = attempts.filter((one) => one.learner === learner.id && one.assignment === assignment.id);
      return { assignment, attempts: own.length, percent: countedPercent(own, assignment.policy) };
    }),
  }));
  const totals = exact.map(({ entries }) => weightedTotal(entries));
  return {
    assignments,
    rows: exact.map(({ learner, entries }, index) => ({
      learner,
      cells: entries.map(toCell),
      total: shownOrNull(totals[index] ?? null),
    })),
    means: assignments.map((_, column) =>
      shownOrNull(mean(exact.map(({ entries }) => entries[column]?.percent ?? null))),
    ),
    totalMean: shownOrNull(mean(totals)),
  };
}

interface Entry {
  readonly assignment: GradebookAssignment;
  readonly attempts: number;
  readonly percent: number | null;
}

function toCell({ assignment, attempts, percent }: Entry): GradebookCell {
  const state = percent !== null ? "graded" : assignment.closed ? "missing" : "open";
  const shown = shownOrNull(percent);
  return {
    assignment: assignment.id,
    percent: shown,
    attempts,
    // What is shown decides: a learner who reads 60.0 with a pass mark of 60 has passed.
    passed: shown === null ? (state === "missing" ? false : null) : shown >= assignment.passMark,
    state,
  };
}

function weightedTotal(entries: readonly Entry[]): number | null {
  let [points, weights] = [0, 0];
  for (const { assignment, percent } of entries) {
    if (percent === null && !assignment.closed) continue;
    points += assignment.weight * (percent ?? 0);
    weights += assignment.weight;
  }
  return weights === 0 ? null : points / weights;
}

function mean(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, one) => sum + one, 0) / known.length;
}

const shownOrNull = (percent: number | null): number | null => (percent === null ? null : toShown(percent));
