import "server-only";
import { randomBytes } from "node:crypto";
import { type Database, hashPassword } from "@probeworthy/database";
import type { SessionUser } from "../auth/session-user";
import { startAttempt } from "./attempts/start-attempt";

export interface AcceptInvitation {
  readonly token: string;
  readonly name: string;
  /** Absent when the person is signed in already. */
  readonly password: string | undefined;
  readonly now: Date;
}

export type AcceptResult =
  | { readonly ok: true; readonly value: { readonly attemptId: string | undefined } }
  | {
      readonly ok: false;
      readonly error: { readonly code: "unknown" | "used" | "expired" | "revoked" | "sign_in_required" };
    };

/** Uses the link up: makes the account when the address has none, and hands over the job that waits behind it. */
export async function acceptInvitation(
  database: Database,
  signedIn: SessionUser | undefined,
  { token, name, password, now }: AcceptInvitation,
): Promise<AcceptResult> {
  const consumed = await database.invitations.consume({
    token,
    name,
    // A signed-in person keeps their own password; this one is then neither stored nor known to anybody.
    passwordHash: await hashPassword(password ?? randomBytes(32).toString("base64url")),
    signedInUserId: signedIn?.userId ?? null,
    now,
  });
  if (!consumed.ok) return consumed;
  const { userId, organisationId, assignmentId } = consumed.value;
  await database.audit.append({
    organisationId,
    actorId: userId,
    action: "invitation.used",
    resourceType: "assignment",
    resourceId: assignmentId,
    detail: {},
    at: now,
  });
  if (assignmentId === null) return { ok: true, value: { attemptId: undefined } };
  // The clock of the job starts with its first action, so handing it over at once costs the candidate nothing.
  const started = await startAttempt(database, { userId, organisationId }, assignmentId, now);
  return { ok: true, value: { attemptId: started.ok ? started.value.attemptId : undefined } };
}
