import { type Client, inTransaction, type TransactionClient } from "../client";
import { toJson, toOptionalJson } from "../json";
import { fail, type Result, succeed } from "../result";

export interface AppendEvent {
  organisationId: string;
  attemptId: string;
  learnerId: string;
  /** Sequence of the last event the writer has seen; 0 before the first. */
  expectedSequence: number;
  command: unknown;
  observation: unknown;
  cost: unknown;
  /** Simulated shop time after this event. */
  elapsedSeconds: number;
  /** The slow state of the vehicle after this event: a secret. */
  world: unknown;
  recordedAt: Date;
  /** Log this event and close the attempt in the same transaction. */
  closeAs?: "submitted" | "abandoned";
}

export type AppendProblem =
  | { code: "not_found" }
  | { code: "stale_sequence"; current: number }
  | { code: "attempt_closed"; status: "submitted" | "graded" | "abandoned" };

/**
 * Appends one event. Moving the attempt's counter from `expectedSequence` on is the lock: of two writers with
 * the same expectation one moves it, the other finds it moved.
 */
export async function appendEvent(
  client: Client,
  input: AppendEvent,
): Promise<Result<{ sequence: number }, AppendProblem>> {
  const { organisationId, attemptId, learnerId, expectedSequence, elapsedSeconds, recordedAt, closeAs } =
    input;
  const sequence = expectedSequence + 1;
  return inTransaction(client, async (tx) => {
    const moved = await tx.attempt.updateMany({
      where: { id: attemptId, organisationId, learnerId, status: "open", sequence: expectedSequence },
      data: {
        sequence,
        elapsedSeconds,
        ...(closeAs === undefined ? {} : { status: closeAs, submittedAt: recordedAt }),
      },
    });
    if (moved.count === 0) return fail(await whyNot(tx, input));
    await tx.attemptEvent.create({
      data: {
        attemptId,
        sequence,
        command: toJson(input.command),
        observation: toJson(input.observation),
        cost: toOptionalJson(input.cost),
        elapsedSeconds,
        world: toOptionalJson(input.world),
        recordedAt,
      },
      select: { sequence: true },
    });
    return succeed({ sequence });
  });
}

interface CloseAttempt {
  organisationId: string;
  attemptId: string;
  learnerId: string;
  at: Date;
  as: "submitted" | "abandoned";
}

export async function closeAttempt(
  client: Client,
  input: CloseAttempt,
): Promise<Result<null, AppendProblem>> {
  const { organisationId, attemptId, learnerId, at, as } = input;
  const { count } = await client.attempt.updateMany({
    where: { id: attemptId, organisationId, learnerId, status: "open" },
    data: { status: as, submittedAt: at },
  });
  return count === 1 ? succeed(null) : fail(await whyNot(client, input));
}

async function whyNot(
  client: TransactionClient,
  { organisationId, attemptId, learnerId }: { organisationId: string; attemptId: string; learnerId: string },
): Promise<AppendProblem> {
  const attempt = await client.attempt.findFirst({
    where: { id: attemptId, organisationId, learnerId },
    select: { status: true, sequence: true },
  });
  if (attempt === null) return { code: "not_found" };
  if (attempt.status !== "open") return { code: "attempt_closed", status: attempt.status };
  return { code: "stale_sequence", current: attempt.sequence };
}
