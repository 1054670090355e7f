import type { Client } from "../client";
import type { AssignmentMode, RevealPolicy } from "../generated/client";
import { toJson } from "../json";
import { fail, type Result, succeed } from "../result";
import { type EffectiveGrade, forEffectiveGrade, toEffectiveGrade } from "./effective-grade";

export interface AssignmentTerms {
  title: string;
  scenarioVersionId: string;
  mode: AssignmentMode;
  opensAt: Date | null;
  closesAt: Date | null;
  /** Null: no limit. */
  attemptLimit: number | null;
  weights: unknown;
  /** Percent of the maximum, 0 to 100. */
  passMark: number;
  reveal: RevealPolicy;
}

export interface Assignment extends AssignmentTerms {
  id: string;
  classId: string | null;
  candidateId: string | null;
  archivedAt: Date | null;
  createdAt: Date;
}

/** What a learner may know about work handed out: no scenario, whose title may name the fault. */
export interface AssignmentForLearner {
  id: string;
  title: string;
  classTitle: string | null;
  mode: AssignmentMode;
  opensAt: Date | null;
  closesAt: Date | null;
  attemptLimit: number | null;
  passMark: number;
  reveal: RevealPolicy;
  attemptCount: number;
  openAttemptId: string | null;
  latestAttemptId: string | null;
  bestGrade: EffectiveGrade | null;
}

export interface AssignmentForStaff extends Assignment {
  scenarioTitle: string;
  attemptCount: number;
  submittedCount: number;
}

interface AssignmentRef {
  organisationId: string;
  assignmentId: string;
}

export const toTermColumns = (terms: AssignmentTerms) => ({
  title: terms.title,
  scenarioVersionId: terms.scenarioVersionId,
  mode: terms.mode,
  opensAt: terms.opensAt,
  closesAt: terms.closesAt,
  attemptLimit: terms.attemptLimit,
  weights: toJson(terms.weights),
  passMark: terms.passMark,
  reveal: terms.reveal,
});

/** Work of classes the learner is enrolled in, and work handed to them by name. */
export const handedTo = (learnerId: string) => ({
  OR: [
    { candidateId: learnerId },
    { class: { archivedAt: null, enrolments: { some: { userId: learnerId, role: "learner" as const } } } },
  ],
});

const forStaff = {
  scenarioVersion: { select: { scenario: { select: { title: true } } } },
  attempts: { select: { status: true } },
} as const;

export function createAssignmentRepository(client: Client) {
  const learnerRows = async (organisationId: string, learnerId: string, assignmentId?: string) => {
    const rows = await client.assignment.findMany({
      where: {
        organisationId,
        archivedAt: null,
        ...(assignmentId === undefined ? {} : { id: assignmentId }),
        ...handedTo(learnerId),
      },
      include: {
        class: { select: { title: true } },
        attempts: { where: { learnerId }, orderBy: { number: "asc" }, include: forEffectiveGrade },
      },
      orderBy: [{ createdAt: "desc" }, { id: "desc" }],
    });
    return rows.map((row): AssignmentForLearner => {
      const { id, title, mode, opensAt, closesAt, attemptLimit, passMark, reveal, attempts } = row;
      return {
        id,
        title,
        classTitle: row.class?.title ?? null,
        mode,
        opensAt,
        closesAt,
        attemptLimit,
        passMark,
        reveal,
        attemptCount: attempts.length,
        openAttemptId: attempts.find(({ status }) => status === "open")?.id ?? null,
        latestAttemptId: attempts.at(-1)?.id ?? null,
        bestGrade: best(attempts.map(toEffectiveGrade)),
      };
    });
  };

  return {
    /** For a class, or for one candidate by name. */
    async create(
      input: AssignmentTerms & {
        organisationId: string;
        for: { classId: string } | { candidateId: string };
        createdById: string;
      },
    ): Promise<
      Result<{ id: string }, { code: "not_found"; what: "scenario_version" | "class" | "candidate" }>
    > {
      const { organisationId, for: target, createdById } = input;
      const version = await client.scenarioVersion.count({
        where: { id: input.scenarioVersionId, scenario: { organisationId } },
      });
      if (version === 0) return fail({ code: "not_found", what: "scenario_version" });
      let receiver: { classId: string } | { candidateId: string };
      if ("classId" in target) {
        const known = await client.class.count({ where: { id: target.classId, organisationId } });
        if (known === 0) return fail({ code: "not_found", what: "class" });
        receiver = { classId: target.classId };
      } else {
        const known = await client.membership.count({
          where: { userId: target.candidateId, organisationId },
        });
        if (known === 0) return fail({ code: "not_found", what: "candidate" });
        receiver = { candidateId: target.candidateId };
      }
      const { id } = await client.assignment.create({
        data: { organisationId, createdById, ...toTermColumns(input), ...receiver },
      });
      return succeed({ id });
    },

    /** Staff's view; a learner gets {@link getForLearner}. */
    async get({ organisationId, assignmentId }: AssignmentRef): Promise<AssignmentForStaff | null> {
      const row = await client.assignment.findFirst({
        where: { id: assignmentId, organisationId },
        include: forStaff,
      });
      return row === null ? null : toStaff(row);
    },

    async getForLearner(input: AssignmentRef & { learnerId: string }): Promise<AssignmentForLearner | null> {
      const rows = await learnerRows(input.organisationId, input.learnerId, input.assignmentId);
      return rows[0] ?? null;
    },

    async listForLearner(input: {
      organisationId: string;
      learnerId: string;
    }): Promise<AssignmentForLearner[]> {
      return learnerRows(input.organisationId, input.learnerId);
    },

    async listForClass(input: { organisationId: string; classId: string }): Promise<AssignmentForStaff[]> {
      const { organisationId, classId } = input;
      const rows = await client.assignment.findMany({
        where: { organisationId, classId, archivedAt: null },
        include: forStaff,
        orderBy: [{ createdAt: "asc" }, { id: "asc" }],
      });
      return rows.map(toStaff);
    },

    /** Work handed to single people, or waiting behind an invitation. */
    async listForCandidates(input: { organisationId: string }): Promise<AssignmentForStaff[]> {
      const rows = await client.assignment.findMany({
        where: { organisationId: input.organisationId, classId: null, archivedAt: null },
        include: forStaff,
        orderBy: [{ createdAt: "desc" }, { id: "desc" }],
      });
      return rows.map(toStaff);
    },

    async archive(input: AssignmentRef & { archivedAt: Date | null }): Promise<boolean> {
      const { organisationId, assignmentId, archivedAt } = input;
      const { count } = await client.assignment.updateMany({
        where: { id: assignmentId, organisationId },
        data: { archivedAt },
      });
      return count === 1;
    },
  };
}

function best(grades: (EffectiveGrade | null)[]): EffectiveGrade | null {
  const share = ({ score, maximum }: EffectiveGrade) => (maximum === 0 ? 0 : score / maximum);
  return grades.reduce((top, grade) => {
    if (grade === null) return top;
    return top === null || share(grade) > share(top) ? grade : top;
  }, null);
}

interface StaffRow extends Assignment {
  scenarioVersion: { scenario: { title: string } };
  attempts: { status: string }[];
}

function toStaff({ scenarioVersion, attempts, ...row }: StaffRow): AssignmentForStaff {
  return {
    id: row.id,
    title: row.title,
    scenarioVersionId: row.scenarioVersionId,
    scenarioTitle: scenarioVersion.scenario.title,
    classId: row.classId,
    candidateId: row.candidateId,
    mode: row.mode,
    opensAt: row.opensAt,
    closesAt: row.closesAt,
    attemptLimit: row.attemptLimit,
    weights: row.weights,
    passMark: row.passMark,
    reveal: row.reveal,
    archivedAt: row.archivedAt,
    createdAt: row.createdAt,
    attemptCount: attempts.length,
    submittedCount: attempts.filter(({ status }) => status === "submitted" || status === "graded").length,
  };
}
