import "server-only";
import type { Database } from "@probeworthy/database";
import type { SessionUser } from "../../auth/session-user";

export interface OverrideGrade {
  readonly attemptId: string;
  /** Null takes an earlier decision back. */
  readonly score: number | null;
  readonly reason: string;
  readonly now: Date;
}

export type OverrideResult =
  | { readonly ok: true }
  | {
      readonly ok: false;
      readonly error: {
        readonly code: "not_graded" | "nothing_to_withdraw" | "out_of_range";
        readonly message: string;
      };
    };

/** A person's decision about a score. The database keeps every one of them and writes the audit row with it. */
export async function overrideGrade(
  database: Database,
  by: Pick<SessionUser, "userId" | "organisationId">,
  { attemptId, score, reason, now }: OverrideGrade,
): Promise<OverrideResult> {
  const { organisationId, userId } = by;
  if (score === null) {
    const history = await database.grades.history({ organisationId, attemptId });
    if (history?.effective?.isOverridden !== true) {
      return refuse("nothing_to_withdraw", "No decision stands; the computed score counts already.");
    }
  }
  const done = await database.grades.override({
    organisationId,
    attemptId,
    byId: userId,
    reason,
    score,
    createdAt: now,
  });
  if (done.ok) return { ok: true };
  switch (done.error.code) {
    case "not_found":
      throw new Error(`attempt ${attemptId} disappeared while its score was changed`);
    case "not_graded":
      return refuse("not_graded", "There is no grade yet: the report has not been handed in.");
    case "out_of_range":
      return refuse("out_of_range", `The score must lie between 0 and ${done.error.maximum}.`);
  }
}

const refuse = (code: "not_graded" | "nothing_to_withdraw" | "out_of_range", message: string) =>
  ({ ok: false, error: { code, message } }) as const;
