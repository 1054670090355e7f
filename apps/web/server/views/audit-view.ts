import "server-only";
import type { Database } from "@probeworthy/database";
import { type AuditView, auditViewSchema } from "@/features/audit/audit-view";

export interface AuditFilter {
  readonly type?: string | undefined;
  readonly actor?: string | undefined;
  readonly before?: string | undefined;
}

const pageSize = 50;

/** The newest entries of an organisation, narrowed by kind of thing and by person. */
export async function loadAudit(
  database: Database,
  organisationId: string,
  { type, actor, before }: AuditFilter,
): Promise<AuditView> {
  const [found, people] = await Promise.all([
    database.audit.list({
      organisationId,
      limit: pageSize + 1,
      ...(before === undefined ? {} : { before }),
      ...(type === undefined ? {} : { resourceType: type }),
      ...(actor === undefined ? {} : { actorId: actor }),
    }),
    database.users.list({ organisationId }),
  ]);
  const shown = found.slice(0, pageSize);
  return auditViewSchema.parse({
    entries: shown.map((entry) => ({
      id: entry.id,
      at: entry.at.toISOString(),
      actorName: entry.actorName,
      action: entry.action,
      resourceType: entry.resourceType,
      resourceId: entry.resourceId,
      detail: words(entry.detail),
    })),
    people: people.filter(({ role }) => role !== "learner").map(({ id, name }) => ({ id, name })),
    nextBefore: found.length > pageSize ? (shown.at(-1)?.id ?? null) : null,
  } satisfies AuditView);
}

/** The detail as `name: value` pairs; nested values stay JSON. */
function words(detail: unknown): string {
  if (typeof detail !== "object" || detail === null) return detail == null ? "" : String(detail);
  return Object.entries(detail)
    .map(([name, value]) => `${name}: ${typeof value === "string" ? value : JSON.stringify(value)}`)
    .join("; ");
}
