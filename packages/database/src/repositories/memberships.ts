import { type Client, inTransaction, type TransactionClient } from "../client";
import type { Role } from "../generated/client";
import { fail, type Result, succeed } from "../result";
import { lockOrganisation } from "./organisations";

export type MembershipProblem =
  | { code: "not_found" }
  /** An organisation keeps at least one enabled administrator. */
  | { code: "last_administrator" }
  /** The account also serves another organisation, which alone may not be locked out by this one. */
  | { code: "member_elsewhere" };

interface Who {
  organisationId: string;
  userId: string;
}

export function createMembershipRepository(client: Client) {
  return {
    async roleOf({ organisationId, userId }: Who): Promise<Role | null> {
      const row = await client.membership.findUnique({
        where: { userId_organisationId: { userId, organisationId } },
      });
      return row?.role ?? null;
    },

    async setRole(input: Who & { role: Role }): Promise<Result<null, MembershipProblem>> {
      const { organisationId, userId, role } = input;
      return inTransaction(client, async (tx) => {
        const problem = await problemWithLosing(tx, { organisationId, userId }, role === "administrator");
        if (problem !== null) return fail(problem);
        await tx.membership.update({
          where: { userId_organisationId: { organisationId, userId } },
          data: { role, user: { update: { sessionVersion: { increment: 1 } } } },
        });
        return succeed(null);
      });
    },

    /** Shuts an account out and ends its sessions, or lets it in again. */
    async setDisabled(input: Who & { disabledAt: Date | null }): Promise<Result<null, MembershipProblem>> {
      const { organisationId, userId, disabledAt } = input;
      return inTransaction(client, async (tx) => {
        const who = { organisationId, userId };
        const problem =
          (await problemWithLosing(tx, who, disabledAt === null)) ?? (await problemElsewhere(tx, who));
        if (problem !== null) return fail(problem);
        await tx.user.update({
          where: { id: userId },
          data: { disabledAt, sessionVersion: { increment: 1 } },
        });
        return succeed(null);
      });
    },

    /** A password set by an administrator, for an account that belongs to this organisation alone. */
    async resetPassword(input: Who & { passwordHash: string }): Promise<Result<null, MembershipProblem>> {
      const { organisationId, userId, passwordHash } = input;
      return inTransaction(client, async (tx) => {
        const who = { organisationId, userId };
        const problem = (await problemWithLosing(tx, who, true)) ?? (await problemElsewhere(tx, who));
        if (problem !== null) return fail(problem);
        await tx.user.update({
          where: { id: userId },
          data: { passwordHash, sessionVersion: { increment: 1 } },
        });
        return succeed(null);
      });
    },
  };
}

async function problemWithLosing(
  tx: TransactionClient,
  who: Who,
  remainsAdministrator: boolean,
): Promise<MembershipProblem | null> {
  await lockOrganisation(tx, who.organisationId);
  const member = await tx.membership.findUnique({ where: { userId_organisationId: who } });
  if (member === null) return { code: "not_found" };
  if (remainsAdministrator || member.role !== "administrator") return null;
  const others = await tx.membership.count({
    where: {
      organisationId: who.organisationId,
      role: "administrator",
      userId: { not: who.userId },
      user: { disabledAt: null },
    },
  });
  return others === 0 ? { code: "last_administrator" } : null;
}

async function problemElsewhere(tx: TransactionClient, who: Who): Promise<MembershipProblem | null> {
  const elsewhere = await tx.membership.count({
    where: { userId: who.userId, organisationId: { not: who.organisationId } },
  });
  return elsewhere === 0 ? null : { code: "member_elsewhere" };
}
