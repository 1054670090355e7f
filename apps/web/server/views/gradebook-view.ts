import "server-only";
import type { Gradebook, GradebookAttempt } from "@probeworthy/database";
import {
  type AttemptPolicy,
  type GradebookAttempt as CountedAttempt,
  type GradebookMatrix,
  gradebookMatrix,
} from "@probeworthy/gradebook";
import type { GradebookCellView, GradebookView } from "@/features/classes/class-view";

/** Every assignment counts the same; what is not graded yet does not count. */
export function toMatrix(book: Gradebook, policy: AttemptPolicy, now: Date): GradebookMatrix {
  return gradebookMatrix(
    book.learners,
    book.assignments.map(({ id, title, passMark, closesAt }) => ({
      id,
      title,
      passMark,
      weight: 1,
      policy,
      closed: closesAt !== null && now >= closesAt,
    })),
    book.attempts.flatMap((attempt): CountedAttempt[] => {
      const percent = percentOf(attempt);
      if (percent === null) return [];
      return [
        { learner: attempt.learnerId, assignment: attempt.assignmentId, number: attempt.number, percent },
      ];
    }),
  );
}

export function toGradebookView(book: Gradebook, policy: AttemptPolicy, now: Date): GradebookView {
  const matrix = toMatrix(book, policy, now);
  return {
    policy,
    assignments: book.assignments.map(({ id, title, passMark, closesAt }, column) => ({
      id,
      title,
      passMark,
      closesAt: closesAt?.toISOString() ?? null,
      mean: matrix.means[column] ?? null,
    })),
    rows: matrix.rows.map(({ learner, cells, total }) => ({
      id: learner.id,
      name: learner.name,
      email: learner.email,
      total,
      cells: cells.map((cell) => {
        const own = book.attempts.filter(
          ({ learnerId, assignmentId }) => learnerId === learner.id && assignmentId === cell.assignment,
        );
        return toCell(cell, own, policy);
      }),
    })),
    totalMean: matrix.totalMean,
  };
}

/** A grade whose wording nobody has read yet counts as it was worked out, and is marked. */
function percentOf({ grade }: GradebookAttempt): number | null {
  if (grade === null || grade.maximum === 0) return null;
  return (100 * grade.score) / grade.maximum;
}

function toCell(
  cell: GradebookMatrix["rows"][number]["cells"][number],
  own: readonly GradebookAttempt[],
  policy: AttemptPolicy,
): GradebookCellView {
  const counted = countedAttempt(own, policy);
  const shown = counted ?? own.at(-1);
  return {
    assignmentId: cell.assignment,
    state: stateOf(cell.state, own),
    percent: cell.percent,
    passed: cell.passed,
    overridden: counted?.grade?.isOverridden ?? false,
    unread: counted?.grade?.status === "awaiting_review",
    attempts: own.length,
    attemptId: shown?.attemptId ?? null,
  };
}

function stateOf(
  state: "graded" | "missing" | "open",
  own: readonly GradebookAttempt[],
): GradebookCellView["state"] {
  if (state === "graded") return "graded";
  if (own.some(({ status }) => status === "submitted")) return "awaiting";
  if (state === "missing") return "missing";
  return own.some(({ status }) => status === "open") ? "open" : "not_started";
}

function countedAttempt(
  own: readonly GradebookAttempt[],
  policy: AttemptPolicy,
): GradebookAttempt | undefined {
  const graded = own
    .filter((attempt) => percentOf(attempt) !== null)
    .sort((one, other) => one.number - other.number);
  if (policy === "first") return graded[0];
  if (policy !== "best") return graded.at(-1);
  return graded.reduce<GradebookAttempt | undefined>(
    (top, attempt) =>
      top === undefined || (percentOf(attempt) ?? 0) > (percentOf(top) ?? 0) ? attempt : top,
    undefined,
  );
}
