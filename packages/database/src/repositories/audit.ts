import type { Client } from "../client";
import { toJson } from "../json";

export interface AuditEntry {
  id: string;
  actorId: string | null;
  actorName: string | null;
  action: string;
  resourceType: string;
  resourceId: string | null;
  detail: unknown;
  at: Date;
}

export function createAuditRepository(client: Client) {
  return {
    async append(input: {
      organisationId: string;
      actorId: string | null;
      action: string;
      resourceType: string;
      resourceId: string | null;
      detail: unknown;
      at: Date;
    }): Promise<void> {
      const { organisationId, actorId, action, resourceType, resourceId, detail, at } = input;
      await client.auditEntry.create({
        data: { organisationId, actorId, action, resourceType, resourceId, detail: toJson(detail), at },
      });
    },

    /** Newest first; `before` is the id of the last entry already shown. */
    async list(input: {
      organisationId: string;
      limit: number;
      before?: string;
      resource?: { type: string; id: string };
      /** Only what this person did. */
      actorId?: string;
      /** Only entries about this kind of thing, whichever one. */
      resourceType?: string;
    }): Promise<AuditEntry[]> {
      const { organisationId, limit, before, resource, actorId, resourceType } = input;
      const rows = await client.auditEntry.findMany({
        where: {
          organisationId,
          ...(actorId === undefined ? {} : { actorId }),
          ...(resourceType === undefined ? {} : { resourceType }),
          ...(resource === undefined ? {} : { resourceType: resource.type, resourceId: resource.id }),
        },
        include: { actor: { select: { name: true } } },
        orderBy: [{ at: "desc" }, { id: "desc" }],
        take: limit,
        ...(before === undefined ? {} : { cursor: { id: before }, skip: 1 }),
      });
      return rows.map(({ id, actorId, actor, action, resourceType, resourceId, detail, at }) => ({
        id,
        actorId,
        actorName: actor?.name ?? null,
        action,
        resourceType,
        resourceId,
        detail,
        at,
      }));
    },
  };
}
