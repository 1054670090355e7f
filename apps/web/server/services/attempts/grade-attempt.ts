import "server-only";
import type { Database } from "@probeworthy/database";
import type { GradeResult } from "@probeworthy/evaluation";
import { engineVersion, grade } from "@probeworthy/evaluation/server";
import type { AttemptRecord } from "./attempt-record";

/** Grades a handed-in attempt from its log and stores the grade as a new revision. */
export async function gradeAttempt(
  database: Database,
  organisationId: string,
  { attempt, context, events }: AttemptRecord,
  now: Date,
): Promise<GradeResult> {
  const graded = grade(context, events);
  if (!graded.ok) throw new Error(`attempt ${attempt.id} cannot be graded: ${graded.error.code}`);
  const result = graded.value;
  const stored = await database.grades.append({
    organisationId,
    attemptId: attempt.id,
    rubric: result,
    score: result.score,
    maximum: 100,
    status: result.lines.some((line) => line.awaitsPerson) ? "awaiting_review" : "final",
    engineVersion,
    createdAt: now,
  });
  if (!stored.ok) throw new Error(`the grade of attempt ${attempt.id} was not stored: ${stored.error.code}`);
  return result;
}
