import Link from "next/link";
import { notFound } from "next/navigation";
import { buttonClass } from "@/components/button-class";
import { ArchiveButton } from "@/features/scenarios/archive-button";
import { ScenarioScreen } from "@/features/scenarios/scenario-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { staff } from "@/server/auth/staff";
import { database } from "@/server/database";
import { findScenario } from "@/server/services/scenarios/find-scenario";
import { loadScenarioView } from "@/server/views/scenario-view";

export const metadata = { title: "Scenario" };

export default async function ScenarioPage({ params }: { readonly params: Promise<{ id: string }> }) {
  const user = await requireUser(staff);
  const { id } = await params;
  const store = await database();
  const found = await findScenario(store, user.organisationId, id);
  if (found === undefined) notFound();
  const view = await loadScenarioView(store, user, found);
  return (
    <SheetPage
      title={view.title}
      lead={view.document?.learningGoal}
      above={
        <Link href="/scenarios" className="link">
          All scenarios
        </Link>
      }
      actions={
        <>
          {!view.starter && <ArchiveButton scenarioId={id} title={view.title} />}
          <Link href={`/scenarios/new?copy=${id}`} className={buttonClass("quiet")}>
            Copy
          </Link>
          <Link href={`/scenarios/${id}/edit`} className={buttonClass("primary")}>
            {view.hasDraft ? "Go on with the draft" : "New version"}
          </Link>
        </>
      }
      wide
      entries={[
        { label: "Scenario", value: view.title },
        { label: "Vehicle", value: view.vehicleName },
        { label: "Version", value: view.version?.number ?? "none" },
        {
          label: "State",
          value: view.version === null ? "Draft" : view.hasDraft ? "Published, draft open" : "Published",
        },
      ]}
    >
      <ScenarioScreen view={view} />
    </SheetPage>
  );
}
