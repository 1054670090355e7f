import Link from "next/link";
import { notFound } from "next/navigation";
import { BuilderScreen } from "@/features/builder/builder-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { staff } from "@/server/auth/staff";
import { database } from "@/server/database";
import { findScenario } from "@/server/services/scenarios/find-scenario";
import { loadBuilder } from "@/server/views/builder-view";

export const metadata = { title: "Scenario builder" };

export default async function BuilderPage({ params }: { readonly params: Promise<{ id: string }> }) {
  const user = await requireUser(staff);
  const { id } = await params;
  const store = await database();
  const found = await findScenario(store, user.organisationId, id);
  if (found === undefined) notFound();
  const view = await loadBuilder(store, user.organisationId, found);
  return (
    <SheetPage
      title={view.title}
      lead="The draft is saved as you work. Learners meet it only after it is published and handed out."
      above={
        <Link href={`/scenarios/${id}`} className="link">
          Back to the scenario
        </Link>
      }
      wide
      entries={[
        { label: "Scenario", value: view.title },
        { label: "Vehicle", value: view.vehicle.title },
        { label: "Sheet", value: "Builder" },
        {
          label: "Published",
          value: view.publishedNumber === null ? "not yet" : `Version ${view.publishedNumber}`,
        },
      ]}
    >
      <BuilderScreen key={view.scenarioId} view={view} />
    </SheetPage>
  );
}
