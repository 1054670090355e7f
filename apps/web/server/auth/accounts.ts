import "server-only";
import type { Account as StoredAccount } from "@probeworthy/database";
import { database } from "../database";
import type { SessionToken } from "./session-token";
import type { Role } from "./session-user";

/** A person in one organisation, as sessions see them. */
export interface Account {
  readonly userId: string;
  readonly organisationId: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly sessionVersion: number;
  readonly disabled: boolean;
}

export interface AccountWithPassword {
  readonly account: Account;
  /** `null` for people who sign in only through the organisation's identity provider. */
  readonly passwordHash: string | null;
}

/** People with several memberships sign in to the oldest. A person with none has nothing to sign in to. */
export async function findAccountByEmail(email: string): Promise<AccountWithPassword | undefined> {
  const stored = await (await database()).users.findByEmailForSignIn(email);
  const first = stored?.memberships[0];
  if (stored === null || first === undefined) return undefined;
  return { account: toAccount(stored, first), passwordHash: stored.passwordHash };
}

export async function findAccountForSession(
  token: Pick<SessionToken, "userId" | "organisationId">,
): Promise<Account | undefined> {
  const stored = await (await database()).users.findAccount(token.userId);
  const membership = stored?.memberships.find((one) => one.organisationId === token.organisationId);
  return stored === null || membership === undefined ? undefined : toAccount(stored, membership);
}

function toAccount(stored: StoredAccount, membership: StoredAccount["memberships"][number]): Account {
  return {
    userId: stored.id,
    organisationId: membership.organisationId,
    name: stored.name,
    email: stored.email,
    role: membership.role,
    sessionVersion: stored.sessionVersion,
    disabled: stored.disabledAt !== null,
  };
}
