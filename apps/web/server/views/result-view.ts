import "server-only";
import type { Database } from "@probeworthy/database";
import { type GradeResult, gradeResultSchema } from "@probeworthy/evaluation";
import { type ResultView, resultViewSchema, type ShownGrade } from "@/features/result/result-view";
import type { SessionUser } from "../auth/session-user";
import { type AttemptRecord, loadOwnAttempt } from "../services/attempts/attempt-record";
import { toLearnerView } from "../services/attempts/command-attempt";
import { gradeAttempt, gradingProgress } from "../services/attempts/grade-attempt";
import { mayReveal } from "./reveal";

export type ResultAnswer =
  | { readonly kind: "unknown" }
  /** Not handed in yet: there is a bay, but no result. */
  | { readonly kind: "open" }
  | { readonly kind: "result"; readonly view: ResultView };

/** The result of the owner's own attempt, as far as the assignment lets it out. */
export async function loadResult(
  database: Database,
  user: Pick<SessionUser, "userId" | "organisationId">,
  attemptId: string,
  now: Date,
): Promise<ResultAnswer> {
  const record = await loadOwnAttempt(database, user, attemptId);
  if (record === undefined) return { kind: "unknown" };
  const { attempt } = record;
  if (record.state.status === "open") return { kind: "open" };
  const { reveal, closesAt } = attempt.assignment;
  const shared = {
    attemptNumber: attempt.number,
    submittedAt: (attempt.submittedAt ?? now).toISOString(),
    work: toLearnerView(record),
  };
  if (!mayReveal(attempt.assignment, now)) {
    const revealsAt = reveal === "after_close" ? (closesAt?.toISOString() ?? null) : null;
    return { kind: "result", view: resultViewSchema.parse({ kind: "kept_back", ...shared, revealsAt }) };
  }
  const progress = gradingProgress(attempt.id);
  if (progress !== undefined) {
    return { kind: "result", view: resultViewSchema.parse({ kind: "being_graded", ...shared, progress }) };
  }
  const { scenario, document } = record.context;
  const view: ResultView = {
    kind: "shown",
    ...shared,
    grade: await loadGrade(database, user.organisationId, record, now),
    cautions: document.systems.find((system) => system.id === scenario.system)?.cautions ?? [],
  };
  return { kind: "result", view: resultViewSchema.parse(view) };
}

async function loadGrade(
  database: Database,
  organisationId: string,
  record: AttemptRecord,
  now: Date,
): Promise<ShownGrade> {
  const history = await database.grades.history({ organisationId, attemptId: record.attempt.id });
  const latest = history?.revisions[0];
  // A report can be in while its grade is not: the server stopped in between. Grading is repeatable, so do it now.
  const computed: GradeResult =
    latest === undefined
      ? await gradeAttempt(database, organisationId, record, now)
      : gradeResultSchema.parse(latest.rubric);
  const decided = history?.decisions[0];
  const overridden = decided !== undefined && decided.score !== null;
  const score = overridden && decided.score !== null ? decided.score : computed.score;
  const { passMark, lines, evidence, truth } = computed;
  return {
    score,
    passed: score >= passMark,
    passMark,
    lines,
    evidence,
    truth,
    awaitsPerson: !overridden && lines.some((line) => line.awaitsPerson),
    decision: overridden
      ? { by: decided.byName, reason: decided.reason, computedScore: computed.score }
      : null,
  };
}
