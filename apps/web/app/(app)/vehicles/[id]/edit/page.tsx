import Link from "next/link";
import { notFound } from "next/navigation";
import { buttonClass } from "@/components/button-class";
import { WorkspaceScreen } from "@/features/authoring/workspace-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadAuthoring } from "@/server/views/authoring-view";

export const metadata = { title: "Vehicle workspace" };

export default async function VehicleWorkspacePage({ params }: { readonly params: Promise<{ id: string }> }) {
  const user = await requireUser(teachers);
  const { id } = await params;
  const view = await loadAuthoring(await database(), user.organisationId, id);
  if (view === undefined) notFound();
  return (
    <SheetPage
      title={view.title}
      above={
        <Link href="/vehicles" className="link">
          All vehicles
        </Link>
      }
      actions={
        <>
          <Link href={`/vehicles/${id}/versions`} className={buttonClass("quiet")}>
            Versions
          </Link>
          <a href={`/api/vehicles/${id}/export`} download className={buttonClass("quiet")}>
            Export JSON
          </a>
        </>
      }
      wide
      entries={[
        { label: "Vehicle", value: view.title },
        { label: "Sheet", value: "Workspace" },
        {
          label: "Published",
          value: view.publishedNumber === null ? "not yet" : `Version ${view.publishedNumber}`,
        },
      ]}
    >
      <WorkspaceScreen key={view.vehicleId} view={view} />
    </SheetPage>
  );
}
