import Link from "next/link";
import { notFound } from "next/navigation";
import { ChartsScreen } from "@/features/charts/charts-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadCharts } from "@/server/views/charts-view";

export const metadata = { title: "Terminal charts" };

export default async function ChartsPage({ params }: { readonly params: Promise<{ id: string }> }) {
  const { organisationId } = await requireUser(teachers);
  const { id } = await params;
  const store = await database();
  const version = await store.vehicles.latestVersion({ organisationId, vehicleId: id });
  if (version === null) notFound();
  const view = await loadCharts(store, organisationId, version);
  return (
    <SheetPage
      title="Terminal charts"
      lead="Type in the chart of a manual as a CSV file: every row is simulated, and you see where the model and the manual agree."
      above={
        <Link href={`/vehicles/${id}`} className="link">
          {view.vehicleName}
        </Link>
      }
      entries={[
        { label: "Vehicle", value: view.vehicleName },
        { label: "Version", value: view.version },
        { label: "Sheet", value: "Terminal charts" },
        { label: "Charts", value: view.charts.length },
      ]}
    >
      <ChartsScreen view={view} />
    </SheetPage>
  );
}
