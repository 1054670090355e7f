import { type Client, inTransaction } from "../client";
import type { AttemptStatus, GradeStatus } from "../generated/client";
import { toJson } from "../json";
import { fail, type Result, succeed } from "../result";
import { type EffectiveGrade, forEffectiveGrade, toEffectiveGrade } from "./effective-grade";

export interface GradeRevision {
  id: string;
  revision: number;
  rubric: unknown;
  score: number;
  maximum: number;
  status: GradeStatus;
  engineVersion: string;
  createdAt: Date;
}

export interface GradeDecision {
  id: string;
  gradeId: string;
  byId: string;
  byName: string;
  reason: string;
  /** Null: the decision was withdrawn and the computed grade stands. */
  score: number | null;
  createdAt: Date;
}

export interface GradeHistory {
  effective: EffectiveGrade | null;
  /** Newest first. */
  revisions: GradeRevision[];
  /** Newest first. */
  decisions: GradeDecision[];
}

/** One attempt in the gradebook. Which of several counts is the gradebook's policy, not the database's. */
export interface GradebookAttempt {
  attemptId: string;
  assignmentId: string;
  learnerId: string;
  number: number;
  status: AttemptStatus;
  startedAt: Date;
  submittedAt: Date | null;
  elapsedSeconds: number;
  grade: EffectiveGrade | null;
}

export interface Gradebook {
  assignments: { id: string; title: string; passMark: number; closesAt: Date | null }[];
  learners: { id: string; name: string; email: string }[];
  attempts: GradebookAttempt[];
}

interface AttemptRef {
  organisationId: string;
  attemptId: string;
}

export function createGradeRepository(client: Client) {
  return {
    /** A new revision of a closed attempt's grade; earlier ones stay. */
    async append(
      input: AttemptRef & {
        rubric: unknown;
        score: number;
        maximum: number;
        status: GradeStatus;
        engineVersion: string;
        createdAt: Date;
      },
    ): Promise<Result<{ id: string; revision: number }, { code: "not_found" } | { code: "attempt_open" }>> {
      const { organisationId, attemptId, rubric, score, maximum, status, engineVersion, createdAt } = input;
      return inTransaction(client, async (tx) => {
        await tx.$queryRaw`SELECT "id" FROM "Attempt" WHERE "id" = ${attemptId} FOR UPDATE`;
        const attempt = await tx.attempt.findFirst({
          where: { id: attemptId, organisationId },
          include: { grades: { select: { revision: true }, orderBy: { revision: "desc" }, take: 1 } },
        });
        if (attempt === null) return fail({ code: "not_found" });
        if (attempt.status === "open") return fail({ code: "attempt_open" });
        const revision = (attempt.grades[0]?.revision ?? 0) + 1;
        const { id } = await tx.grade.create({
          data: {
            attemptId,
            revision,
            rubric: toJson(rubric),
            score,
            maximum,
            status,
            engineVersion,
            createdAt,
          },
        });
        await tx.attempt.updateMany({
          where: { id: attemptId, status: { in: ["submitted", "graded"] } },
          data: { status: status === "final" ? "graded" : "submitted" },
        });
        return succeed({ id, revision });
      });
    },

    async history({ organisationId, attemptId }: AttemptRef): Promise<GradeHistory | null> {
      const row = await client.attempt.findFirst({
        where: { id: attemptId, organisationId },
        select: {
          grades: { orderBy: { revision: "desc" } },
          overrides: {
            include: { by: { select: { name: true } } },
            orderBy: [{ createdAt: "desc" }, { id: "desc" }],
          },
        },
      });
      if (row === null) return null;
      const revisions = row.grades.map(({ attemptId: _, ...revision }): GradeRevision => revision);
      const decisions = row.overrides.map(({ attemptId: _, by, ...decision }): GradeDecision => {
        return { ...decision, byName: by.name };
      });
      return { effective: toEffectiveGrade(row), revisions, decisions };
    },

    /** A person's decision, with its audit entry in the same transaction. */
    async override(
      input: AttemptRef & { byId: string; reason: string; score: number | null; createdAt: Date },
    ): Promise<
      Result<
        { id: string },
        { code: "not_found" } | { code: "not_graded" } | { code: "out_of_range"; maximum: number }
      >
    > {
      const { organisationId, attemptId, byId, reason, score, createdAt } = input;
      return inTransaction(client, async (tx) => {
        await tx.$queryRaw`SELECT "id" FROM "Attempt" WHERE "id" = ${attemptId} FOR UPDATE`;
        const attempt = await tx.attempt.findFirst({
          where: { id: attemptId, organisationId },
          include: {
            grades: { orderBy: { revision: "desc" }, take: 1 },
            overrides: forEffectiveGrade.overrides,
          },
        });
        if (attempt === null) return fail({ code: "not_found" });
        const grade = attempt.grades[0];
        if (grade === undefined) return fail({ code: "not_graded" });
        if (score !== null && !(score >= 0 && score <= grade.maximum)) {
          return fail({ code: "out_of_range", maximum: grade.maximum });
        }
        const before = toEffectiveGrade(attempt)?.score ?? null;
        const { id } = await tx.gradeOverride.create({
          data: { attemptId, gradeId: grade.id, byId, reason, score, createdAt },
        });
        if (attempt.status === "submitted" && score !== null) {
          await tx.attempt.update({
            where: { id: attemptId },
            data: { status: "graded" },
            select: { id: true },
          });
        }
        await tx.auditEntry.create({
          data: {
            organisationId,
            actorId: byId,
            action: score === null ? "grade.override_withdrawn" : "grade.overridden",
            resourceType: "attempt",
            resourceId: attemptId,
            detail: { overrideId: id, gradeId: grade.id, before, after: score ?? grade.score, reason },
            at: createdAt,
          },
        });
        return succeed({ id });
      });
    },

    /** Everything a class's gradebook is made of; null for an unknown class. */
    async gradebook(input: { organisationId: string; classId: string }): Promise<Gradebook | null> {
      const { organisationId, classId } = input;
      const found = await client.class.findFirst({
        where: { id: classId, organisationId },
        include: {
          assignments: {
            where: { archivedAt: null },
            select: { id: true, title: true, passMark: true, closesAt: true },
            orderBy: [{ createdAt: "asc" }, { id: "asc" }],
          },
          enrolments: {
            where: { role: "learner" },
            select: { user: { select: { id: true, name: true, email: true } } },
            orderBy: [{ user: { name: "asc" } }, { userId: "asc" }],
          },
        },
      });
      if (found === null) return null;
      const learners = found.enrolments.map(({ user }) => user);
      const rows = await client.attempt.findMany({
        where: {
          organisationId,
          assignmentId: { in: found.assignments.map(({ id }) => id) },
          learnerId: { in: learners.map(({ id }) => id) },
        },
        include: forEffectiveGrade,
        orderBy: [{ startedAt: "asc" }, { id: "asc" }],
      });
      const attempts = rows.map((row): GradebookAttempt => {
        const { id, assignmentId, learnerId, number, status, startedAt, submittedAt, elapsedSeconds } = row;
        const grade = toEffectiveGrade(row);
        return {
          attemptId: id,
          assignmentId,
          learnerId,
          number,
          status,
          startedAt,
          submittedAt,
          elapsedSeconds,
          grade,
        };
      });
      return { assignments: found.assignments, learners, attempts };
    },
  };
}
