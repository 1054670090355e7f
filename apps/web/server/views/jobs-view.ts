import "server-only";
import type { AssignmentForLearner, Database } from "@probeworthy/database";
import { type Job, jobsViewSchema } from "@/features/jobs/jobs-view";
import type { SessionUser } from "../auth/session-user";
import { mayReveal } from "./reveal";

/** The learner's work, newest first within each state. */
export async function loadJobs(
  database: Database,
  user: Pick<SessionUser, "userId" | "organisationId">,
  now: Date,
): Promise<readonly Job[]> {
  const assignments = await database.assignments.listForLearner({
    organisationId: user.organisationId,
    learnerId: user.userId,
  });
  return jobsViewSchema.parse({ jobs: assignments.map((assignment) => toJob(assignment, now)) }).jobs;
}

function toJob(assignment: AssignmentForLearner, now: Date): Job {
  const { bestGrade, passMark, openAttemptId, latestAttemptId } = assignment;
  return {
    assignmentId: assignment.id,
    title: assignment.title,
    classTitle: assignment.classTitle,
    mode: assignment.mode,
    state: stateOf(assignment, now),
    opensAt: assignment.opensAt?.toISOString() ?? null,
    closesAt: assignment.closesAt?.toISOString() ?? null,
    attempts: assignment.attemptCount,
    attemptLimit: assignment.attemptLimit,
    openAttemptId,
    handedInAttemptId: latestAttemptId === openAttemptId ? null : latestAttemptId,
    score:
      bestGrade === null || !mayReveal(assignment, now)
        ? null
        : {
            score: bestGrade.score,
            maximum: bestGrade.maximum,
            passed: bestGrade.score >= (passMark / 100) * bestGrade.maximum,
            final: bestGrade.status === "final",
          },
  };
}

function stateOf(assignment: AssignmentForLearner, now: Date): Job["state"] {
  const { openAttemptId, opensAt, closesAt, attemptLimit, attemptCount } = assignment;
  if (openAttemptId !== null) return "under_way";
  if (opensAt !== null && now < opensAt) return "not_open_yet";
  if (attemptLimit !== null && attemptCount >= attemptLimit) return "finished";
  if (closesAt !== null && now >= closesAt) return attemptCount > 0 ? "finished" : "closed";
  return "startable";
}
