import type { Client } from "../client";
import type { EnrolmentRole } from "../generated/client";
import { fail, type Result, succeed } from "../result";

export interface ClassSummary {
  id: string;
  title: string;
  term: string;
  archivedAt: Date | null;
  learnerCount: number;
  assignmentCount: number;
}

export interface RosterEntry {
  userId: string;
  name: string;
  email: string;
  /** Assignments of this class the learner has begun. */
  begunCount: number;
  /** Assignments of this class with at least one submitted attempt. */
  submittedCount: number;
  lastStartedAt: Date | null;
}

interface ClassRef {
  organisationId: string;
  classId: string;
}

const counts = {
  enrolments: { where: { role: "learner" } },
  assignments: { where: { archivedAt: null } },
} as const;

export function createClassRepository(client: Client) {
  const isThere = async ({ organisationId, classId }: ClassRef): Promise<boolean> =>
    (await client.class.count({ where: { id: classId, organisationId } })) === 1;

  return {
    async create(input: {
      organisationId: string;
      title: string;
      term: string;
      instructorIds: string[];
    }): Promise<Result<{ id: string }, { code: "unknown_person"; userIds: string[] }>> {
      const { organisationId, title, term, instructorIds } = input;
      const unknown = await notMembers(client, organisationId, instructorIds);
      if (unknown.length > 0) return fail({ code: "unknown_person", userIds: unknown });
      const { id } = await client.class.create({
        data: {
          organisationId,
          title,
          term,
          enrolments: { create: instructorIds.map((userId) => ({ userId, role: "instructor" })) },
        },
      });
      return succeed({ id });
    },

    async find({ organisationId, classId }: ClassRef): Promise<ClassSummary | null> {
      const row = await client.class.findFirst({
        where: { id: classId, organisationId },
        include: { _count: { select: counts } },
      });
      return row === null ? null : toSummary(row);
    },

    /** Every class that is not archived, or those one person teaches. */
    async list(input: { organisationId: string; instructorId?: string }): Promise<ClassSummary[]> {
      const { organisationId, instructorId } = input;
      const rows = await client.class.findMany({
        where: {
          organisationId,
          archivedAt: null,
          ...(instructorId === undefined
            ? {}
            : { enrolments: { some: { userId: instructorId, role: "instructor" } } }),
        },
        include: { _count: { select: counts } },
        orderBy: [{ createdAt: "desc" }, { id: "desc" }],
      });
      return rows.map(toSummary);
    },

    /** Does this person teach this class? */
    async isInstructor(input: ClassRef & { userId: string }): Promise<boolean> {
      const { organisationId, classId, userId } = input;
      const found = await client.enrolment.count({
        where: { classId, userId, role: "instructor", class: { organisationId } },
      });
      return found === 1;
    },

    /** The learners with their progress; null for an unknown class. */
    async roster(ref: ClassRef): Promise<RosterEntry[] | null> {
      if (!(await isThere(ref))) return null;
      const [enrolments, attempts] = await Promise.all([
        client.enrolment.findMany({
          where: { classId: ref.classId, role: "learner" },
          include: { user: true },
          orderBy: [{ user: { name: "asc" } }, { userId: "asc" }],
        }),
        client.attempt.findMany({
          where: { organisationId: ref.organisationId, assignment: { classId: ref.classId } },
          select: { learnerId: true, assignmentId: true, status: true, startedAt: true },
        }),
      ]);
      return enrolments.map(({ user }) => {
        const own = attempts.filter((attempt) => attempt.learnerId === user.id);
        const done = own.filter(({ status }) => status === "submitted" || status === "graded");
        const starts = own.map(({ startedAt }) => startedAt.getTime());
        return {
          userId: user.id,
          name: user.name,
          email: user.email,
          begunCount: new Set(own.map(({ assignmentId }) => assignmentId)).size,
          submittedCount: new Set(done.map(({ assignmentId }) => assignmentId)).size,
          lastStartedAt: starts.length === 0 ? null : new Date(Math.max(...starts)),
        };
      });
    },

    /** Enrols members of the organisation; anyone enrolled already keeps the place they have. */
    async enrol(
      input: ClassRef & { userIds: string[]; role?: EnrolmentRole },
    ): Promise<Result<null, { code: "not_found" } | { code: "unknown_person"; userIds: string[] }>> {
      const { organisationId, classId, userIds, role = "learner" } = input;
      if (!(await isThere(input))) return fail({ code: "not_found" });
      const unknown = await notMembers(client, organisationId, userIds);
      if (unknown.length > 0) return fail({ code: "unknown_person", userIds: unknown });
      await client.enrolment.createMany({
        data: userIds.map((userId) => ({ classId, userId, role })),
        skipDuplicates: true,
      });
      return succeed(null);
    },

    /** Takes somebody off the list; their attempts stay. Answers whether they were on it. */
    async remove(input: ClassRef & { userId: string }): Promise<boolean> {
      const { organisationId, classId, userId } = input;
      const { count } = await client.enrolment.deleteMany({
        where: { classId, userId, class: { organisationId } },
      });
      return count === 1;
    },

    async archive(input: ClassRef & { archivedAt: Date | null }): Promise<boolean> {
      const { organisationId, classId, archivedAt } = input;
      const { count } = await client.class.updateMany({
        where: { id: classId, organisationId },
        data: { archivedAt },
      });
      return count === 1;
    },
  };
}

async function notMembers(client: Client, organisationId: string, userIds: string[]): Promise<string[]> {
  const members = await client.membership.findMany({
    where: { organisationId, userId: { in: userIds } },
    select: { userId: true },
  });
  const known = new Set(members.map(({ userId }) => userId));
  return userIds.filter((userId) => !known.has(userId));
}

interface ClassRow {
  id: string;
  title: string;
  term: string;
  archivedAt: Date | null;
  _count: { enrolments: number; assignments: number };
}

function toSummary({ id, title, term, archivedAt, _count }: ClassRow): ClassSummary {
  return {
    id,
    title,
    term,
    archivedAt,
    learnerCount: _count.enrolments,
    assignmentCount: _count.assignments,
  };
}
