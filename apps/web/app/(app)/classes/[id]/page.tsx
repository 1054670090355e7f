import { attemptPolicies } from "@probeworthy/gradebook";
import Link from "next/link";
import { notFound } from "next/navigation";
import { z } from "zod";
import { buttonClass } from "@/components/button-class";
import { ClassScreen } from "@/features/classes/class-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { findTaughtClass } from "@/server/services/access";
import { loadClass } from "@/server/views/class-view";

export const metadata = { title: "Class" };

const querySchema = z.object({
  policy: z.enum(attemptPolicies).catch("best"),
  tab: z.enum(["gradebook", "learners", "assignments"]).catch("gradebook"),
});

export default async function ClassPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ id: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const user = await requireUser(teachers);
  const { id } = await params;
  const { policy, tab } = querySchema.parse(await searchParams);
  const store = await database();
  const found = await findTaughtClass(store, user, id);
  const view =
    found === undefined ? undefined : await loadClass(store, user.organisationId, found, policy, new Date());
  if (view === undefined) notFound();
  return (
    <SheetPage
      title={view.title}
      lead={view.term}
      above={
        <Link href="/classes" className="link">
          All classes
        </Link>
      }
      actions={
        <>
          <Link href={`/classes/${id}/statistics`} className={buttonClass("quiet")}>
            Statistics
          </Link>
          <Link href={`/classes/${id}/assignments/new`} className={buttonClass("primary")}>
            Hand out work
          </Link>
        </>
      }
      wide
      entries={[
        { label: "Class", value: view.title },
        { label: "Term", value: view.term },
        { label: "Learners", value: view.roster.length },
        { label: "Assignments", value: view.assignments.length },
      ]}
    >
      <ClassScreen view={view} initialTab={tab} />
    </SheetPage>
  );
}
