import "server-only";
import { z } from "zod";
import type { Account } from "./accounts";
import { roles } from "./session-user";

/** What the signed and encrypted session cookie carries. The database is asked again on every request. */
const sessionTokenSchema = z.object({
  userId: z.string().min(1),
  organisationId: z.string().min(1),
  role: z.enum(roles),
  sessionVersion: z.number().int(),
});

export type SessionToken = z.infer<typeof sessionTokenSchema>;

export function parseSessionToken(token: unknown): SessionToken | undefined {
  return sessionTokenSchema.safeParse(token).data;
}

export function toSessionToken(account: Account): SessionToken {
  const { userId, organisationId, role, sessionVersion } = account;
  return { userId, organisationId, role, sessionVersion };
}

/** A disabled person and one whose sessions were ended are out at once. The role is always the database's. */
export function sessionStillHolds(token: SessionToken, account: Account | undefined): account is Account {
  return account !== undefined && !account.disabled && account.sessionVersion === token.sessionVersion;
}
