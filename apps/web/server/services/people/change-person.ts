import "server-only";
import { type Database, hashPassword, type MembershipProblem } from "@probeworthy/database";
import type { PersonChange } from "@/features/people/person-input";
import { makeFirstPassword } from "../first-password";

export interface PersonProblem {
  readonly code: MembershipProblem["code"];
  readonly message: string;
}

type Outcome<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly error: PersonProblem };

interface Who {
  readonly organisationId: string;
  readonly userId: string;
}

const messages: Readonly<Record<MembershipProblem["code"], string>> = {
  not_found: "There is no such person here.",
  last_administrator:
    "This is the last administrator who can sign in. Make somebody else an administrator first.",
  member_elsewhere:
    "This account also belongs to another organisation. Only the operator of this server can change it.",
};

const refused = ({ code }: MembershipProblem) =>
  ({ ok: false, error: { code, message: messages[code] } }) as const;

export async function changePerson(
  database: Database,
  who: Who,
  change: PersonChange,
  now: Date,
): Promise<Outcome<null>> {
  const done =
    "role" in change
      ? await database.memberships.setRole({ ...who, role: change.role })
      : await database.memberships.setDisabled({ ...who, disabledAt: change.disabled ? now : null });
  return done.ok ? { ok: true, value: null } : refused(done.error);
}

/** A new first password; the old one stops working and every session ends. */
export async function replacePassword(database: Database, who: Who): Promise<Outcome<{ password: string }>> {
  const password = makeFirstPassword();
  const done = await database.memberships.resetPassword({
    ...who,
    passwordHash: await hashPassword(password),
  });
  return done.ok ? { ok: true, value: { password } } : refused(done.error);
}
