import Link from "next/link";
import { notFound } from "next/navigation";
import { z } from "zod";
import { buttonClass } from "@/components/button-class";
import { VersionsScreen } from "@/features/authoring/versions/versions-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadVersions } from "@/server/views/authoring-view";

export const metadata = { title: "Versions" };

const number = z.coerce.number().int().positive().optional().catch(undefined);
const querySchema = z.object({ from: number, to: number });

interface VersionsPageProps {
  readonly params: Promise<{ id: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function VersionsPage({ params, searchParams }: VersionsPageProps) {
  const user = await requireUser(teachers);
  const { id } = await params;
  const chosen = querySchema.parse(await searchParams);
  const view = await loadVersions(await database(), user.organisationId, id, chosen);
  if (view === undefined) notFound();
  return (
    <SheetPage
      title={`Versions of ${view.title}`}
      lead="A published version never changes. What was handed out keeps the version it was handed out with."
      above={
        <Link href={view.versions.length > 0 ? `/vehicles/${id}` : "/vehicles"} className="link">
          {view.versions.length > 0 ? "Back to the vehicle" : "All vehicles"}
        </Link>
      }
      actions={
        <>
          <a href="/api/vehicle-schema" download className={buttonClass("quiet")}>
            JSON Schema
          </a>
          <Link href={`/vehicles/${id}/edit`} className={buttonClass("primary")}>
            {view.hasDraft ? "Go on with the draft" : "Change it"}
          </Link>
        </>
      }
      entries={[
        { label: "Vehicle", value: view.title },
        { label: "Sheet", value: "Versions" },
        { label: "Versions", value: view.versions.length },
      ]}
    >
      <VersionsScreen key={`${view.from} ${view.to}`} view={view} />
    </SheetPage>
  );
}
