import type { Client } from "../client";
import type { AssignmentMode, AttemptStatus, RevealPolicy } from "../generated/client";
import type { Result } from "../result";
import { type AppendEvent, type AppendProblem, appendEvent, closeAttempt } from "./append-event";
import { type ReportOfClass, reportsOfClass } from "./class-reports";
import { type EffectiveGrade, forEffectiveGrade, toEffectiveGrade } from "./effective-grade";
import { type StartAttempt, type StartProblem, startAttempt } from "./start-attempt";

export interface AttemptVersions {
  vehicleVersionId: string;
  scenarioVersionId: string;
  engineVersion: string;
}

/** An attempt without its secrets. */
export interface Attempt {
  id: string;
  assignmentId: string;
  learnerId: string;
  learnerName: string;
  number: number;
  status: AttemptStatus;
  sequence: number;
  elapsedSeconds: number;
  startedAt: Date;
  submittedAt: Date | null;
  grade: EffectiveGrade | null;
  assignment: {
    title: string;
    classId: string | null;
    mode: AssignmentMode;
    closesAt: Date | null;
    passMark: number;
    reveal: RevealPolicy;
  };
}

/** Everything the server needs to continue or grade an attempt. Never leaves the server. */
export interface AttemptSecrets extends AttemptVersions {
  attemptId: string;
  variantSeed: string;
  variant: unknown;
  weights: unknown;
  status: AttemptStatus;
  sequence: number;
  /** The slow state of the vehicle after the last event; null before the first. */
  world: unknown;
}

/** A line of the log as the learner saw it. */
export interface AttemptEvent {
  sequence: number;
  command: unknown;
  observation: unknown;
  cost: unknown;
  elapsedSeconds: number;
  recordedAt: Date;
}

/** A line of the log with the hidden state after it. Never leaves the server. */
export interface AttemptEventWithWorld extends AttemptEvent {
  world: unknown;
}

export interface AttemptRef {
  organisationId: string;
  attemptId: string;
}

const forAttempt = {
  learner: { select: { name: true } },
  assignment: {
    select: { title: true, classId: true, mode: true, closesAt: true, passMark: true, reveal: true },
  },
  ...forEffectiveGrade,
};

const learnerSafe = {
  sequence: true,
  command: true,
  observation: true,
  cost: true,
  elapsedSeconds: true,
  recordedAt: true,
} as const;

export function createAttemptRepository(client: Client) {
  const list = async (where: { organisationId: string; learnerId?: string; assignmentId?: string }) => {
    const rows = await client.attempt.findMany({
      where,
      include: forAttempt,
      orderBy: [{ startedAt: "desc" }, { id: "desc" }],
    });
    return rows.map(toAttempt);
  };
  const log = ({ organisationId, attemptId }: AttemptRef) => ({
    where: { attemptId, attempt: { organisationId } },
    orderBy: { sequence: "asc" as const },
  });

  return {
    start: (input: StartAttempt): Promise<Result<{ id: string; number: number }, StartProblem>> =>
      startAttempt(client, input),

    /** The learner's own attempt; anybody else's answers like an unknown one. */
    async getForLearner(input: AttemptRef & { learnerId: string }): Promise<Attempt | null> {
      const { organisationId, attemptId, learnerId } = input;
      const row = await client.attempt.findFirst({
        where: { id: attemptId, organisationId, learnerId },
        include: forAttempt,
      });
      return row === null ? null : toAttempt(row);
    },

    async getForStaff({ organisationId, attemptId }: AttemptRef): Promise<Attempt | null> {
      const row = await client.attempt.findFirst({
        where: { id: attemptId, organisationId },
        include: forAttempt,
      });
      return row === null ? null : toAttempt(row);
    },

    /** The only way to read the seed, the variant and the hidden state of the vehicle. */
    async getSecrets({ organisationId, attemptId }: AttemptRef): Promise<AttemptSecrets | null> {
      const row = await client.attempt.findFirst({
        where: { id: attemptId, organisationId },
        select: {
          variantSeed: true,
          variant: true,
          vehicleVersionId: true,
          scenarioVersionId: true,
          engineVersion: true,
          status: true,
          sequence: true,
          assignment: { select: { weights: true } },
          events: { select: { world: true }, orderBy: { sequence: "desc" }, take: 1 },
        },
      });
      if (row === null) return null;
      const { assignment, events, ...rest } = row;
      return { attemptId, ...rest, weights: assignment.weights, world: events[0]?.world ?? null };
    },

    async listForLearner(input: { organisationId: string; learnerId: string }): Promise<Attempt[]> {
      return list({ organisationId: input.organisationId, learnerId: input.learnerId });
    },

    async listForAssignment(input: { organisationId: string; assignmentId: string }): Promise<Attempt[]> {
      return list({ organisationId: input.organisationId, assignmentId: input.assignmentId });
    },

    /** Reports of a class with their secrets, for statistics. Never leaves the server. */
    reportsOfClass: (input: { organisationId: string; classId: string }): Promise<ReportOfClass[]> =>
      reportsOfClass(client, input),

    /** The log without the hidden state. Empty for an unknown attempt: ask for the attempt first. */
    async events(ref: AttemptRef): Promise<AttemptEvent[]> {
      return client.attemptEvent.findMany({ ...log(ref), select: learnerSafe });
    },

    /** The log with the hidden state, for grading and replay on the server. */
    async eventsWithWorld(ref: AttemptRef): Promise<AttemptEventWithWorld[]> {
      return client.attemptEvent.findMany({ ...log(ref), select: { ...learnerSafe, world: true } });
    },

    appendEvent: (input: AppendEvent): Promise<Result<{ sequence: number }, AppendProblem>> =>
      appendEvent(client, input),

    /** Closes the attempt as it stands. To log the report and close in one step, append with `closeAs`. */
    submit: (input: AttemptRef & { learnerId: string; at: Date }): Promise<Result<null, AppendProblem>> =>
      closeAttempt(client, { ...input, as: "submitted" }),

    abandon: (input: AttemptRef & { learnerId: string; at: Date }): Promise<Result<null, AppendProblem>> =>
      closeAttempt(client, { ...input, as: "abandoned" }),
  };
}

interface AttemptRow extends Omit<Attempt, "grade" | "learnerName"> {
  learner: { name: string };
  grades: Parameters<typeof toEffectiveGrade>[0]["grades"];
  overrides: Parameters<typeof toEffectiveGrade>[0]["overrides"];
}

function toAttempt(row: AttemptRow): Attempt {
  return {
    id: row.id,
    assignmentId: row.assignmentId,
    learnerId: row.learnerId,
    learnerName: row.learner.name,
    number: row.number,
    status: row.status,
    sequence: row.sequence,
    elapsedSeconds: row.elapsedSeconds,
    startedAt: row.startedAt,
    submittedAt: row.submittedAt,
    grade: toEffectiveGrade(row),
    assignment: row.assignment,
  };
}
