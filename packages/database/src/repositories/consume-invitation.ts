import { type Client, inTransaction, type TransactionClient } from "../client";
import { isUniqueViolation } from "../errors";
import { fail, type Result, succeed } from "../result";
import { hashToken } from "./token";

export interface ConsumeInvitation {
  token: string;
  /** For the new account. */
  name: string;
  passwordHash: string;
  /** Who is signed in while using the link; an address that has an account already needs its owner. */
  signedInUserId: string | null;
  now: Date;
}

export type ConsumeProblem =
  | { code: "unknown" }
  | { code: "used" }
  | { code: "expired" }
  | { code: "revoked" }
  /**
   * The address has an account. Whoever made the link knows the token too, so the link alone must never
   * open somebody's account: its owner signs in first.
   */
  | { code: "sign_in_required" };

/** Marking the invitation used is the lock: of two uses of one link one finds it unused. */
export async function consumeInvitation(
  client: Client,
  input: ConsumeInvitation,
): Promise<Result<{ userId: string; organisationId: string; assignmentId: string | null }, ConsumeProblem>> {
  const tokenHash = hashToken(input.token);
  const invitation = await client.invitation.findUnique({ where: { tokenHash } });
  if (invitation === null) return fail({ code: "unknown" });
  const { id, organisationId, role, assignmentId, email } = invitation;
  try {
    return await inTransaction(client, async (tx) => {
      const existing = await tx.user.findUnique({ where: { email }, select: { id: true } });
      if (existing !== null && existing.id !== input.signedInUserId) {
        const problem = await whyNot(tx, id, input.now);
        return fail(problem ?? { code: "sign_in_required" });
      }
      const taken = await tx.invitation.updateMany({
        where: { id, usedAt: null, revokedAt: null, expiresAt: { gt: input.now } },
        data: { usedAt: input.now },
      });
      if (taken.count === 0) return fail((await whyNot(tx, id, input.now)) ?? { code: "used" });
      const userId = existing?.id ?? (await createAccount(tx, { ...input, email }));
      await tx.membership.createMany({ data: [{ userId, organisationId, role }], skipDuplicates: true });
      await tx.invitation.update({ where: { id }, data: { usedById: userId } });
      if (assignmentId !== null) {
        await tx.assignment.update({ where: { id: assignmentId }, data: { candidateId: userId } });
      }
      return succeed({ userId, organisationId, assignmentId });
    });
  } catch (error) {
    // Somebody else opened an account for this address in the same moment; nothing of ours was kept.
    if (isUniqueViolation(error)) return fail({ code: "sign_in_required" });
    throw error;
  }
}

async function createAccount(
  tx: TransactionClient,
  { email, name, passwordHash }: { email: string; name: string; passwordHash: string },
): Promise<string> {
  const { id } = await tx.user.create({ data: { email, name, passwordHash }, select: { id: true } });
  return id;
}

async function whyNot(tx: TransactionClient, id: string, now: Date): Promise<ConsumeProblem | null> {
  const row = await tx.invitation.findUnique({ where: { id } });
  if (row === null) return { code: "unknown" };
  if (row.usedAt !== null) return { code: "used" };
  if (row.revokedAt !== null) return { code: "revoked" };
  return now >= row.expiresAt ? { code: "expired" } : null;
}
