import Link from "next/link";
import { z } from "zod";
import { AuditLog } from "@/features/audit/audit-log";
import { auditedTypes } from "@/features/audit/audit-view";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { database } from "@/server/database";
import { loadAudit } from "@/server/views/audit-view";

export const metadata = { title: "Log" };

const id = z.string().min(1).max(64).optional().catch(undefined);
const querySchema = z.object({
  type: z.enum(auditedTypes).optional().catch(undefined),
  actor: id,
  before: id,
});

export default async function LogPage({
  searchParams,
}: {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const user = await requireUser(["administrator"]);
  const filter = querySchema.parse(await searchParams);
  const view = await loadAudit(await database(), user.organisationId, filter);
  return (
    <SheetPage
      title="Log"
      lead="Who did what, newest first. Nothing in it can be changed."
      above={
        <Link href="/people" className="link">
          People
        </Link>
      }
      wide
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "Log" },
        { label: "Entries", value: view.entries.length },
      ]}
    >
      <AuditLog view={view} filter={filter} />
    </SheetPage>
  );
}
