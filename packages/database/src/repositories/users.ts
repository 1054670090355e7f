import type { Client } from "../client";
import { isUniqueViolation } from "../errors";
import type { Role } from "../generated/client";
import { fail, type Result, succeed } from "../result";

export interface MembershipOfUser {
  organisationId: string;
  organisationName: string;
  role: Role;
}

/** A person with every membership: what a session is built from. */
export interface Account {
  id: string;
  email: string;
  name: string;
  disabledAt: Date | null;
  sessionVersion: number;
  memberships: MembershipOfUser[];
}

/** Carries the password hash: for the sign-in check only, never for a view. */
export interface AccountForSignIn extends Account {
  passwordHash: string | null;
}

/** A person as one organisation sees them. */
export interface Person {
  id: string;
  email: string;
  name: string;
  role: Role;
  disabledAt: Date | null;
  createdAt: Date;
}

/** Addresses are compared without case and without surrounding space. */
export const normaliseEmail = (email: string): string => email.trim().toLowerCase();

const withMemberships = {
  memberships: {
    select: { organisationId: true, role: true, organisation: { select: { name: true } } },
    orderBy: { createdAt: "asc" },
  },
} as const;

interface MembershipRow {
  organisationId: string;
  role: Role;
  organisation: { name: string };
}

const toMemberships = (rows: MembershipRow[]): MembershipOfUser[] =>
  rows.map(({ organisationId, role, organisation }) => ({
    organisationId,
    organisationName: organisation.name,
    role,
  }));

const accountColumns = { id: true, email: true, name: true, disabledAt: true, sessionVersion: true } as const;

export function createUserRepository(client: Client) {
  return {
    /** The only way to read a password hash. */
    async findByEmailForSignIn(email: string): Promise<AccountForSignIn | null> {
      const row = await client.user.findUnique({
        where: { email: normaliseEmail(email) },
        select: { ...accountColumns, passwordHash: true, ...withMemberships },
      });
      return row === null ? null : { ...row, memberships: toMemberships(row.memberships) };
    },

    /** Asked on every request: is this session's person still there, enabled, and of the same session version. */
    async findAccount(userId: string): Promise<Account | null> {
      const row = await client.user.findUnique({
        where: { id: userId },
        select: { ...accountColumns, ...withMemberships },
      });
      return row === null ? null : { ...row, memberships: toMemberships(row.memberships) };
    },

    async find({
      organisationId,
      userId,
    }: {
      organisationId: string;
      userId: string;
    }): Promise<Person | null> {
      const row = await client.membership.findUnique({
        where: { userId_organisationId: { userId, organisationId } },
        include: { user: true },
      });
      return row === null ? null : toPerson(row);
    },

    async list({ organisationId, role }: { organisationId: string; role?: Role }): Promise<Person[]> {
      const rows = await client.membership.findMany({
        where: { organisationId, ...(role === undefined ? {} : { role }) },
        include: { user: true },
        orderBy: [{ user: { name: "asc" } }, { userId: "asc" }],
      });
      return rows.map(toPerson);
    },

    async create(input: {
      organisationId: string;
      email: string;
      name: string;
      role: Role;
      passwordHash: string | null;
    }): Promise<Result<Person, { code: "email_taken" }>> {
      const { organisationId, name, role, passwordHash } = input;
      try {
        const user = await client.user.create({
          data: {
            email: normaliseEmail(input.email),
            name,
            passwordHash,
            memberships: { create: { organisationId, role } },
          },
        });
        return succeed(toPerson({ role, user }));
      } catch (error) {
        if (isUniqueViolation(error)) return fail({ code: "email_taken" });
        throw error;
      }
    },

    /** Ends every session of the person. Answers whether there was such a person. */
    async setPassword(input: { userId: string; passwordHash: string }): Promise<boolean> {
      const { count } = await client.user.updateMany({
        where: { id: input.userId },
        data: { passwordHash: input.passwordHash, sessionVersion: { increment: 1 } },
      });
      return count === 1;
    },
  };
}

interface PersonRow {
  role: Role;
  user: { id: string; email: string; name: string; disabledAt: Date | null; createdAt: Date };
}

function toPerson({ role, user }: PersonRow): Person {
  const { id, email, name, disabledAt, createdAt } = user;
  return { id, email, name, role, disabledAt, createdAt };
}
