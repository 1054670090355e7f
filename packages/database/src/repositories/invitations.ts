import { type Client, inTransaction } from "../client";
import type { Role } from "../generated/client";
import { fail, type Result, succeed } from "../result";
import { type AssignmentTerms, toTermColumns } from "./assignments";
import { type ConsumeInvitation, type ConsumeProblem, consumeInvitation } from "./consume-invitation";
import { createToken, hashToken } from "./token";
import { normaliseEmail } from "./users";

export type InvitationState = "waiting" | "used" | "expired" | "revoked";

export interface Invitation {
  id: string;
  email: string;
  name: string;
  role: Role;
  assignmentId: string | null;
  assignmentTitle: string | null;
  state: InvitationState;
  expiresAt: Date;
  usedAt: Date | null;
  usedById: string | null;
  createdById: string;
  createdAt: Date;
}

/** What the holder of a link may read before using it. */
export interface InvitationForHolder {
  organisationName: string;
  name: string;
  email: string;
  assignmentTitle: string | null;
  state: InvitationState;
  expiresAt: Date;
}

const withAssignmentTitle = { assignment: { select: { title: true } } } as const;

export function createInvitationRepository(client: Client) {
  return {
    /**
     * Invites one person, optionally with work waiting for them. The token is answered once: only its hash is
     * kept, so a lost link is replaced by a new invitation.
     */
    async create(input: {
      organisationId: string;
      createdById: string;
      email: string;
      name: string;
      role: Role;
      assignment: AssignmentTerms | null;
      expiresAt: Date;
    }): Promise<Result<{ id: string; token: string; assignmentId: string | null }, { code: "not_found" }>> {
      const { organisationId, createdById, name, role, assignment, expiresAt } = input;
      const token = createToken();
      return inTransaction(client, async (tx) => {
        let assignmentId: string | null = null;
        if (assignment !== null) {
          const known = await tx.scenarioVersion.count({
            where: { id: assignment.scenarioVersionId, scenario: { organisationId } },
          });
          if (known === 0) return fail({ code: "not_found" });
          const row = await tx.assignment.create({
            data: { organisationId, createdById, ...toTermColumns(assignment) },
          });
          assignmentId = row.id;
        }
        const { id } = await tx.invitation.create({
          data: {
            organisationId,
            createdById,
            tokenHash: hashToken(token),
            email: normaliseEmail(input.email),
            name,
            role,
            assignmentId,
            expiresAt,
          },
        });
        return succeed({ id, token, assignmentId });
      });
    },

    /** For the page behind the link; looking does not use it up. */
    async findByToken(input: { token: string; now: Date }): Promise<InvitationForHolder | null> {
      const row = await client.invitation.findUnique({
        where: { tokenHash: hashToken(input.token) },
        include: { organisation: { select: { name: true } }, assignment: { select: { title: true } } },
      });
      if (row === null) return null;
      return {
        organisationName: row.organisation.name,
        name: row.name,
        email: row.email,
        assignmentTitle: row.assignment?.title ?? null,
        state: stateOf(row, input.now),
        expiresAt: row.expiresAt,
      };
    },

    consume: (
      input: ConsumeInvitation,
    ): Promise<
      Result<{ userId: string; organisationId: string; assignmentId: string | null }, ConsumeProblem>
    > => consumeInvitation(client, input),

    async list(input: { organisationId: string; now: Date }): Promise<Invitation[]> {
      const rows = await client.invitation.findMany({
        where: { organisationId: input.organisationId },
        include: withAssignmentTitle,
        orderBy: [{ createdAt: "desc" }, { id: "desc" }],
      });
      return rows.map((row) => toInvitation(row, input.now));
    },

    async find(input: {
      organisationId: string;
      invitationId: string;
      now: Date;
    }): Promise<Invitation | null> {
      const row = await client.invitation.findFirst({
        where: { id: input.invitationId, organisationId: input.organisationId },
        include: withAssignmentTitle,
      });
      return row === null ? null : toInvitation(row, input.now);
    },

    /** Answers whether there was an unused invitation to revoke. */
    async revoke(input: { organisationId: string; invitationId: string; revokedAt: Date }): Promise<boolean> {
      const { count } = await client.invitation.updateMany({
        where: {
          id: input.invitationId,
          organisationId: input.organisationId,
          usedAt: null,
          revokedAt: null,
        },
        data: { revokedAt: input.revokedAt },
      });
      return count === 1;
    },
  };
}

interface InvitationRow extends Omit<Invitation, "assignmentTitle" | "state"> {
  revokedAt: Date | null;
  assignment: { title: string } | null;
}

function toInvitation(row: InvitationRow, now: Date): Invitation {
  return {
    id: row.id,
    email: row.email,
    name: row.name,
    role: row.role,
    assignmentId: row.assignmentId,
    assignmentTitle: row.assignment?.title ?? null,
    state: stateOf(row, now),
    expiresAt: row.expiresAt,
    usedAt: row.usedAt,
    usedById: row.usedById,
    createdById: row.createdById,
    createdAt: row.createdAt,
  };
}

interface Dates {
  usedAt: Date | null;
  revokedAt: Date | null;
  expiresAt: Date;
}

function stateOf({ usedAt, revokedAt, expiresAt }: Dates, now: Date): InvitationState {
  if (usedAt !== null) return "used";
  if (revokedAt !== null) return "revoked";
  return now >= expiresAt ? "expired" : "waiting";
}
