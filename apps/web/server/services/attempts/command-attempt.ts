import "server-only";
import type { Database } from "@probeworthy/database";
import type { Command, LearnerView, Refusal } from "@probeworthy/evaluation";
import { decide, learnerView } from "@probeworthy/evaluation/server";
import {
  type AttemptOwner,
  type AttemptRecord,
  loadOwnAttempt,
  noteAppended,
  toStored,
} from "./attempt-record";
import { gradeAttempt } from "./grade-attempt";

export interface AttemptCommand {
  readonly attemptId: string;
  /** Sequence of the last line the learner has seen. */
  readonly expectedSequence: number;
  readonly command: Command;
  readonly now: Date;
}

export type CommandResult =
  | { readonly ok: true; readonly value: LearnerView }
  | {
      readonly ok: false;
      readonly error:
        | { readonly code: "not_found" }
        /** The log went on; nothing was done. Comes with what the learner would see now. */
        | { readonly code: "stale_sequence"; readonly view: LearnerView }
        | { readonly code: "refused"; readonly refusal: Refusal };
    };

/** Carries out one command of the attempt's owner: it is stored before anything of it is shown. */
export async function commandAttempt(
  database: Database,
  owner: AttemptOwner,
  { attemptId, expectedSequence, command, now }: AttemptCommand,
): Promise<CommandResult> {
  const record = await loadOwnAttempt(database, owner, attemptId);
  if (record === undefined) return { ok: false, error: { code: "not_found" } };
  // The sequence comes first: a report sent twice because its answer was lost is stale, not refused.
  if (expectedSequence !== record.state.sequence) return stale(record);
  const closed = refuseClosed(record, command, now);
  if (closed !== undefined) return { ok: false, error: { code: "refused", refusal: closed } };

  const decided = decide(record.context, record.state, command);
  if (!decided.ok) return { ok: false, error: { code: "refused", refusal: decided.error } };
  const [event, ...more] = decided.value;
  if (event === undefined || more.length > 0)
    throw new Error(`${command.type} must come to one line of the log`);

  const appended = await database.attempts.appendEvent({
    organisationId: owner.organisationId,
    attemptId,
    learnerId: owner.userId,
    expectedSequence,
    ...toStored(event),
    recordedAt: now,
    ...(command.type === "submitReport" ? { closeAs: "submitted" as const } : {}),
  });
  if (!appended.ok) {
    if (appended.error.code === "not_found") return { ok: false, error: { code: "not_found" } };
    const again = await loadOwnAttempt(database, owner, attemptId);
    return again === undefined ? { ok: false, error: { code: "not_found" } } : stale(again);
  }
  const next = noteAppended(record, event);
  if (command.type === "submitReport") await gradeAttempt(database, owner.organisationId, next, now);
  return { ok: true, value: toLearnerView(next) };
}

export function toLearnerView({ context, state, events }: AttemptRecord): LearnerView {
  return learnerView(context, state, events);
}

function stale(record: AttemptRecord): CommandResult {
  return { ok: false, error: { code: "stale_sequence", view: toLearnerView(record) } };
}

function refuseClosed({ attempt }: AttemptRecord, command: Command, now: Date): Refusal | undefined {
  if (attempt.status !== "open") {
    return {
      code: "attempt_closed",
      message: "The report of this job is handed in. Nothing more can be done here.",
    };
  }
  const { closesAt } = attempt.assignment;
  if (closesAt !== null && now >= closesAt && command.type !== "submitReport") {
    return {
      code: "attempt_closed",
      message: "The time for this job is over. Hand in your report with what you have found.",
    };
  }
  return undefined;
}
