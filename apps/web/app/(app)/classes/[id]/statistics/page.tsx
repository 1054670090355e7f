import Link from "next/link";
import { notFound } from "next/navigation";
import { SheetPage } from "@/features/shell/sheet-page";
import { StatisticsScreen } from "@/features/statistics/statistics-screen";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { findTaughtClass } from "@/server/services/access";
import { loadStatistics } from "@/server/views/statistics-view";

export const metadata = { title: "Statistics" };

export default async function StatisticsPage({ params }: { readonly params: Promise<{ id: string }> }) {
  const user = await requireUser(teachers);
  const { id } = await params;
  const store = await database();
  const found = await findTaughtClass(store, user, id);
  if (found === undefined) notFound();
  const view = await loadStatistics(store, user.organisationId, found);
  return (
    <SheetPage
      title="Statistics"
      lead={`${view.title}, ${view.term}`}
      above={
        <Link href={`/classes/${id}`} className="link">
          {view.title}
        </Link>
      }
      wide
      entries={[
        { label: "Class", value: view.title },
        { label: "Term", value: view.term },
        { label: "First attempts", value: view.attempts },
        { label: "Assignments", value: view.items.length },
      ]}
    >
      <StatisticsScreen view={view} />
    </SheetPage>
  );
}
