import "server-only";
import type { Database, VehicleVersion } from "@probeworthy/database";
import {
  type ChartsView,
  type ChartView,
  chartResultSchema,
  chartsViewSchema,
  chartViewSchema,
} from "@/features/charts/charts-view";
import { loadVehicle } from "../services/attempts/documents";

export async function loadCharts(
  database: Database,
  organisationId: string,
  version: VehicleVersion,
): Promise<ChartsView> {
  const document = await loadVehicle(database, { organisationId, versionId: version.id });
  const charts = await database.charts.list({ organisationId, vehicleId: version.vehicleId });
  const titles = document.systems.flatMap(({ chart }) => chart.map(({ conditionTitle }) => conditionTitle));
  return chartsViewSchema.parse({
    vehicleId: version.vehicleId,
    vehicleName: version.vehicleName,
    version: version.number,
    conditionTitles: [...new Set(titles)],
    conditionNames: document.conditions.map((condition) => ({
      name: condition.name,
      title: condition.title,
      values:
        condition.kind === "choice"
          ? condition.options.map(({ value }) => value).join(", ")
          : `${condition.minimum} to ${condition.maximum} ${condition.unit}`,
    })),
    charts: charts.map(({ id, name, createdAt, vehicleVersionId }) => ({
      id,
      name,
      createdAt: createdAt.toISOString(),
      current: vehicleVersionId === version.id,
    })),
  } satisfies ChartsView);
}

/** A checked chart of this vehicle; undefined for one of another. */
export async function loadChart(
  database: Database,
  organisationId: string,
  vehicleId: string,
  chartId: string,
): Promise<ChartView | undefined> {
  const chart = await database.charts.find({ organisationId, chartId });
  if (chart === null) return undefined;
  const version = await database.vehicles.version({ organisationId, versionId: chart.vehicleVersionId });
  if (version === null || version.vehicleId !== vehicleId) return undefined;
  return chartViewSchema.parse({
    id: chart.id,
    name: chart.name,
    createdAt: chart.createdAt.toISOString(),
    vehicleId,
    vehicleName: version.vehicleName,
    version: version.number,
    result: chartResultSchema.parse(chart.result),
  } satisfies ChartView);
}
