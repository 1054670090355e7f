import "server-only";
import type { Attempt, Database, GradeHistory } from "@probeworthy/database";
import { type AttemptEvent, gradeResultSchema } from "@probeworthy/evaluation";
import { type ReviewedGrade, type ReviewView, reviewViewSchema } from "@/features/review/review-view";
import { type AttemptRecord, loadRecord } from "../services/attempts/attempt-record";
import { toLearnerView } from "../services/attempts/command-attempt";
import { gradeAttempt } from "../services/attempts/grade-attempt";
import { describeFault } from "./fault-words";

/** Replay of an attempt's log with the secret side. The caller has checked who may see it. */
export async function loadReview(
  database: Database,
  organisationId: string,
  attempt: Attempt,
  now: Date,
): Promise<ReviewView> {
  const ref = { organisationId, attemptId: attempt.id };
  const record = await loadRecord(database, organisationId, attempt);
  const [history, secrets] = await Promise.all([
    completeHistory(database, organisationId, record, now),
    database.attempts.getSecrets(ref),
  ]);
  if (secrets === null) throw new Error(`attempt ${attempt.id} disappeared while it was read`);
  const version = await database.scenarios.version({ organisationId, versionId: secrets.scenarioVersionId });
  if (version === null) throw new Error(`scenario version ${secrets.scenarioVersionId} is missing`);
  const { variant, scenario, document } = record.context;
  const units = new Map(document.conditions.map((one) => [one.name, one]));
  return reviewViewSchema.parse({
    attemptId: attempt.id,
    learnerName: attempt.learnerName,
    number: attempt.number,
    title: attempt.assignment.title,
    mode: attempt.assignment.mode,
    classId: attempt.assignment.classId,
    status: record.attempt.status,
    startedAt: attempt.startedAt.toISOString(),
    submittedAt: attempt.submittedAt?.toISOString() ?? null,
    work: toLearnerView(record),
    grade: toGrade(history, attempt.assignment.passMark),
    revisions: history.revisions.map(({ revision, score, engineVersion, createdAt }) => ({
      revision,
      score,
      engineVersion,
      createdAt: createdAt.toISOString(),
    })),
    decisions: history.decisions.map(({ id, byName, reason, score, createdAt }) => ({
      id,
      byName,
      reason,
      score,
      createdAt: createdAt.toISOString(),
    })),
    secret: {
      candidate: variant.title,
      normal: variant.normal,
      faults: variant.faults.map(describeFault),
      conditions: Object.entries(variant.conditions).map(([name, value]) => {
        const condition = units.get(name);
        return `${condition?.title ?? name} ${value}${condition?.kind === "number" ? ` ${condition.unit}` : ""}`;
      }),
      seed: variant.seed,
      scenarioTitle: version.title,
      scenarioVersion: version.number,
      engineVersion: secrets.engineVersion,
      instructorNote: scenario.instructorNote,
      remarks: record.events.flatMap(remarksOf),
    },
  } satisfies ReviewView);
}

/** A report can be in while its grade is not: the server stopped in between. Grading is repeatable, so do it now. */
async function completeHistory(
  database: Database,
  organisationId: string,
  record: AttemptRecord,
  now: Date,
): Promise<GradeHistory> {
  const ref = { organisationId, attemptId: record.attempt.id };
  const before = await database.grades.history(ref);
  if (record.state.status === "submitted" && before?.revisions.length === 0) {
    await gradeAttempt(database, organisationId, record, now);
    return (await database.grades.history(ref)) ?? { effective: null, revisions: [], decisions: [] };
  }
  return before ?? { effective: null, revisions: [], decisions: [] };
}

function toGrade({ effective, revisions }: GradeHistory, passMark: number): ReviewedGrade | null {
  const latest = revisions[0];
  if (latest === undefined || effective === null) return null;
  const { lines, evidence, truth } = gradeResultSchema.parse(latest.rubric);
  return {
    score: effective.score,
    computedScore: latest.score,
    passed: effective.score >= passMark,
    passMark,
    lines,
    evidence,
    truth,
    awaitsPerson: effective.status !== "final",
  };
}

type Remark = AttemptEvent["world"]["remarks"][number];

const remarkWords: Readonly<Record<Remark, string>> = {
  ohms_on_live_circuit: "Measured resistance on a circuit with voltage on it: the figure means nothing",
  amps_across_supply: "Put the 10 A input across a supply",
  meter_fuse_blown: "Blew the meter's fuse",
  fuse_blew: "A fuse of the car blew",
  unplugged_live: "Parted a control module's connector while it would be powered",
  parted_under_load: "Parted a circuit while it carried current",
};

const remarksOf = ({ sequence, world }: AttemptEvent) =>
  world.remarks.map((remark) => ({ line: sequence, text: remarkWords[remark] }));
