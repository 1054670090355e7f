import Link from "next/link";
import { z } from "zod";
import { EmptyState } from "@/components/empty-state";
import { NewScenarioForm } from "@/features/scenarios/new-scenario-form";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { staff } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadNewScenarioOptions } from "@/server/views/new-scenario-view";

export const metadata = { title: "New scenario" };

const querySchema = z.object({ copy: z.string().optional().catch(undefined) });

export default async function NewScenarioPage({
  searchParams,
}: {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const user = await requireUser(staff);
  const { copy } = querySchema.parse(await searchParams);
  const options = await loadNewScenarioOptions(await database(), user.organisationId);
  return (
    <SheetPage
      title="New scenario"
      lead="Starting from a copy is the quick way: change the faults and the words, keep the rest."
      above={
        <Link href="/scenarios" className="link">
          All scenarios
        </Link>
      }
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "New scenario" },
      ]}
    >
      {options.vehicles.length === 0 ? (
        <EmptyState title="No vehicle is there">An administrator of this server adds vehicles.</EmptyState>
      ) : (
        <NewScenarioForm options={options} copyOf={copy} />
      )}
    </SheetPage>
  );
}
