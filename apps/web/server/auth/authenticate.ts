import "server-only";
import type { Account, AccountWithPassword } from "./accounts";

export interface AuthenticateDependencies {
  findByEmail(email: string): Promise<AccountWithPassword | undefined>;
  /** Must take the same time without a hash as with one. */
  verifyPassword(password: string, hash: string | null): Promise<boolean>;
  /** Counts this try; `false` when too many have failed. */
  beginTry(email: string): Promise<boolean>;
  noteSuccess(email: string): Promise<void>;
}

export type AuthenticateResult =
  | { readonly ok: true; readonly value: Account }
  | { readonly ok: false; readonly error: { readonly code: "wrong_credentials" | "too_many_tries" } };

/**
 * Checks email and password. Unknown address, missing password, disabled person and wrong password all cost one hash
 * verification and give the same answer, so that nobody can find out who has an account.
 */
export async function authenticate(
  credentials: { readonly email: string; readonly password: string },
  dependencies: AuthenticateDependencies,
): Promise<AuthenticateResult> {
  const email = credentials.email.trim().toLowerCase();
  if (!(await dependencies.beginTry(email))) return { ok: false, error: { code: "too_many_tries" } };
  const found = await dependencies.findByEmail(email);
  const matches = await dependencies.verifyPassword(credentials.password, found?.passwordHash ?? null);
  if (!matches || found === undefined || found.account.disabled) {
    return { ok: false, error: { code: "wrong_credentials" } };
  }
  await dependencies.noteSuccess(email);
  return { ok: true, value: found.account };
}
