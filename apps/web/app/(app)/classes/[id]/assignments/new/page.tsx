import Link from "next/link";
import { notFound } from "next/navigation";
import { z } from "zod";
import { EmptyState } from "@/components/empty-state";
import { AssignmentForm } from "@/features/assignments/assignment-form";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { findTaughtClass } from "@/server/services/access";
import { loadAssignmentOptions } from "@/server/views/assignment-options";

export const metadata = { title: "Hand out work" };

const querySchema = z.object({ scenario: z.string().optional().catch(undefined) });

export default async function NewAssignmentPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ id: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const user = await requireUser(teachers);
  const { id } = await params;
  const { scenario } = querySchema.parse(await searchParams);
  const store = await database();
  const found = await findTaughtClass(store, user, id);
  if (found === undefined) notFound();
  const options = await loadAssignmentOptions(store, user.organisationId, found);
  return (
    <SheetPage
      title="Hand out work"
      lead={`To ${options.classTitle}. Every learner gets a variant of their own, drawn when they start.`}
      above={
        <Link href={`/classes/${id}?tab=assignments`} className="link">
          {options.classTitle}
        </Link>
      }
      entries={[
        { label: "Class", value: options.classTitle },
        { label: "Sheet", value: "New assignment" },
      ]}
    >
      {options.scenarios.length === 0 ? (
        <EmptyState
          title="No scenario is published"
          action={
            <Link href="/scenarios" className="link">
              Go to the scenarios
            </Link>
          }
        >
          Publish one first; then it can be handed out.
        </EmptyState>
      ) : (
        <AssignmentForm options={options} scenarioId={scenario} />
      )}
    </SheetPage>
  );
}
