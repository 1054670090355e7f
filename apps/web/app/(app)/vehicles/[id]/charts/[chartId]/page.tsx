import Link from "next/link";
import { notFound } from "next/navigation";
import { buttonClass } from "@/components/button-class";
import { ChartResultTable } from "@/features/charts/chart-result-table";
import { PrintButton } from "@/features/result/print-button";
import { SheetPage } from "@/features/shell/sheet-page";
import { LocalTime } from "@/features/time/local-time";
import { requireUser } from "@/server/auth/require-user";
import { teachers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadChart } from "@/server/views/charts-view";

export const metadata = { title: "Terminal chart" };

export default async function ChartPage({
  params,
}: {
  readonly params: Promise<{ id: string; chartId: string }>;
}) {
  const { organisationId } = await requireUser(teachers);
  const { id, chartId } = await params;
  const view = await loadChart(await database(), organisationId, id, chartId);
  if (view === undefined) notFound();
  const { rows } = view.result;
  const differs = rows.filter(({ agrees }) => !agrees).length;
  return (
    <SheetPage
      title={view.name}
      lead={
        differs === 0
          ? `All ${rows.length} rows agree with the simulated vehicle.`
          : `${differs} of ${rows.length} rows differ from the simulated vehicle.`
      }
      above={
        <Link href={`/vehicles/${id}/charts`} className="link">
          Terminal charts
        </Link>
      }
      actions={
        <>
          <a href={`/api/charts/${chartId}/csv`} download className={buttonClass("quiet")}>
            Download as uploaded
          </a>
          <PrintButton />
        </>
      }
      wide
      entries={[
        { label: "Chart", value: view.name },
        { label: "Vehicle", value: `${view.vehicleName}, version ${view.version}` },
        { label: "Checked", value: <LocalTime at={view.createdAt} /> },
        { label: "Differ", value: `${differs} of ${rows.length}` },
      ]}
    >
      <ChartResultTable rows={rows} />
    </SheetPage>
  );
}
