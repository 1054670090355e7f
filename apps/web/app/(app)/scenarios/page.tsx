import Link from "next/link";
import { buttonClass } from "@/components/button-class";
import { ScenarioList } from "@/features/scenarios/scenario-list";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { staff } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadScenarios } from "@/server/views/scenarios-view";

export const metadata = { title: "Scenarios" };

export default async function ScenariosPage() {
  const user = await requireUser(staff);
  const { scenarios } = await loadScenarios(await database(), user.organisationId);
  return (
    <SheetPage
      title="Scenarios"
      lead="Jobs that can be handed out. Titles and causes are for staff: learners read only what the assignment says."
      actions={
        <Link href="/scenarios/new" className={buttonClass("primary")}>
          New scenario
        </Link>
      }
      wide
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "Scenarios" },
        { label: "Scenarios", value: scenarios.length },
      ]}
    >
      <ScenarioList scenarios={scenarios} />
    </SheetPage>
  );
}
