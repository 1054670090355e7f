import type { Client } from "../client";
import type { AttemptVersions } from "./attempts";

/** A handed-in attempt with what is needed to judge its report. Never leaves the server. */
export interface ReportOfClass extends AttemptVersions {
  attemptId: string;
  assignmentId: string;
  learnerId: string;
  number: number;
  variant: unknown;
  /** The last line of the log: the report, unless the attempt was closed without one. */
  lastCommand: unknown;
}

/** Attempts of the class's learners at the work it has now, a learner's attempts at one assignment in order. */
export async function reportsOfClass(
  client: Client,
  { organisationId, classId }: { organisationId: string; classId: string },
): Promise<ReportOfClass[]> {
  const rows = await client.attempt.findMany({
    where: {
      organisationId,
      status: { in: ["submitted", "graded"] },
      assignment: { classId, archivedAt: null },
      learner: { enrolments: { some: { classId, role: "learner" } } },
    },
    select: {
      id: true,
      assignmentId: true,
      learnerId: true,
      number: true,
      variant: true,
      vehicleVersionId: true,
      scenarioVersionId: true,
      engineVersion: true,
      events: { select: { command: true }, orderBy: { sequence: "desc" }, take: 1 },
    },
    orderBy: [{ assignmentId: "asc" }, { learnerId: "asc" }, { number: "asc" }],
  });
  return rows.map(({ id, events, ...rest }) => ({
    attemptId: id,
    ...rest,
    lastCommand: events[0]?.command ?? null,
  }));
}
