import "server-only";
import { setImmediate } from "node:timers/promises";
import type { Database } from "@probeworthy/database";
import type { GradeResult } from "@probeworthy/evaluation";
import { engineVersion, gradeSteps } from "@probeworthy/evaluation/server";
import type { AttemptRecord } from "./attempt-record";

/** How long grading may hold the event loop before others get their turn, ms. */
const sliceMilliseconds = 15;

interface Grading {
  /** 0 … 1 */
  progress: number;
  readonly result: Promise<GradeResult>;
}

// Pages and API routes may each have their own copy of this module; the grades under way are those of the process.
const holder = globalThis as typeof globalThis & { probeworthyGrading?: Map<string, Grading> };
holder.probeworthyGrading ??= new Map();
const underWay = holder.probeworthyGrading;

/** How far the grade of an attempt has got, 0 … 1; undefined when none is being worked out in this process. */
export const gradingProgress = (attemptId: string): number | undefined => underWay.get(attemptId)?.progress;

/**
 * Grades a handed-in attempt from its log and stores the grade as a new revision. Who asks while that is under way gets
 * the same grade.
 */
export function gradeAttempt(
  database: Database,
  organisationId: string,
  record: AttemptRecord,
  now: Date,
): Promise<GradeResult> {
  const { id } = record.attempt;
  const known = underWay.get(id);
  if (known !== undefined) return known.result;
  const result = gradeAndStore(database, organisationId, record, now).finally(() => underWay.delete(id));
  underWay.set(id, { progress: 0, result });
  return result;
}

async function gradeAndStore(
  database: Database,
  organisationId: string,
  record: AttemptRecord,
  now: Date,
): Promise<GradeResult> {
  const { attempt } = record;
  const result = await gradeInTurns(record);
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

/** Grading is seconds of computing: between its pieces everybody else is served. */
async function gradeInTurns({ attempt, context, events }: AttemptRecord): Promise<GradeResult> {
  const steps = gradeSteps(context, events);
  for (;;) {
    await setImmediate();
    const until = performance.now() + sliceMilliseconds;
    let step = steps.next();
    while (step.done !== true && performance.now() < until) step = steps.next();
    if (step.done === true) {
      if (!step.value.ok) throw new Error(`attempt ${attempt.id} cannot be graded: ${step.value.error.code}`);
      return step.value.value;
    }
    const grading = underWay.get(attempt.id);
    if (grading !== undefined) grading.progress = step.value;
  }
}
