import "server-only";
import { database } from "../database";
import type { Role } from "./session-user";

/** A person as sign-in and session checks see them. The password hash stays inside server/auth. */
export interface Account {
  readonly userId: string;
  readonly organisationId: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly sessionVersion: number;
  readonly disabled: boolean;
  /** Absent for people who sign in only through the organisation's identity provider. */
  readonly passwordHash: string | undefined;
}

export async function findAccountByEmail(email: string): Promise<Account | undefined> {
  const { users } = await database();
  return users.findAccountByEmail(email);
}

export async function findAccountById(userId: string): Promise<Account | undefined> {
  const { users } = await database();
  return users.findAccountById(userId);
}
