import { type Client, inTransaction } from "../client";
import { toJson } from "../json";
import { fail, type Result, succeed } from "../result";
import { handedTo } from "./assignments";

export interface StartAttempt {
  organisationId: string;
  assignmentId: string;
  learnerId: string;
  /** The version the variant was made from: it must still be the assignment's. */
  scenarioVersionId: string;
  variantSeed: string;
  variant: unknown;
  engineVersion: string;
  now: Date;
}

export type StartProblem =
  | { code: "not_found" }
  | { code: "not_open_yet"; opensAt: Date }
  | { code: "closed"; closesAt: Date }
  | { code: "attempt_limit_reached"; limit: number }
  /** One open attempt at a time: go on with this one. */
  | { code: "already_open"; attemptId: string };

/** Window and limit are checked in the transaction that creates the attempt, so two clicks make one attempt. */
export async function startAttempt(
  client: Client,
  input: StartAttempt,
): Promise<Result<{ id: string; number: number }, StartProblem>> {
  const { organisationId, assignmentId, learnerId, scenarioVersionId, now } = input;
  return inTransaction(client, async (tx) => {
    await tx.$queryRaw`SELECT 1 AS "locked" FROM pg_advisory_xact_lock(hashtextextended(${`${assignmentId}/${learnerId}`}, 0))`;
    const assignment = await tx.assignment.findFirst({
      where: {
        id: assignmentId,
        organisationId,
        archivedAt: null,
        scenarioVersionId,
        ...handedTo(learnerId),
      },
      include: { scenarioVersion: { select: { vehicleVersionId: true } } },
    });
    if (assignment === null) return fail({ code: "not_found" });
    const { opensAt, closesAt, attemptLimit } = assignment;
    const attempts = await tx.attempt.findMany({
      where: { assignmentId, learnerId },
      select: { id: true, number: true, status: true },
      orderBy: { number: "asc" },
    });
    const open = attempts.find(({ status }) => status === "open");
    if (open !== undefined) return fail({ code: "already_open", attemptId: open.id });
    if (opensAt !== null && now < opensAt) return fail({ code: "not_open_yet", opensAt });
    if (closesAt !== null && now >= closesAt) return fail({ code: "closed", closesAt });
    if (attemptLimit !== null && attempts.length >= attemptLimit) {
      return fail({ code: "attempt_limit_reached", limit: attemptLimit });
    }
    const number = (attempts.at(-1)?.number ?? 0) + 1;
    const { id } = await tx.attempt.create({
      data: {
        organisationId,
        assignmentId,
        learnerId,
        number,
        variantSeed: input.variantSeed,
        variant: toJson(input.variant),
        vehicleVersionId: assignment.scenarioVersion.vehicleVersionId,
        scenarioVersionId,
        engineVersion: input.engineVersion,
        startedAt: now,
      },
    });
    return succeed({ id, number });
  });
}
