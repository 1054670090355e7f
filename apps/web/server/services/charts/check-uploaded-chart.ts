import "server-only";
import type { Database } from "@probeworthy/database";
import { checkChart, parseChart, prepareVehicle } from "@probeworthy/vehicle";
import type { ChartInput } from "@/features/charts/chart-input";
import type { ChartResult } from "@/features/charts/charts-view";
import type { SessionUser } from "../../auth/session-user";
import type { LatestVehicle } from "../scenarios/find-scenario";

export type UploadResult =
  | {
      readonly ok: true;
      readonly value: { readonly id: string; readonly differs: number; readonly rows: number };
    }
  | {
      readonly ok: false;
      readonly error:
        | {
            readonly code: "unreadable";
            readonly errors: { readonly path: string; readonly message: string }[];
          }
        | { readonly code: "unsolvable"; readonly message: string };
    };

/** Reads a chart, simulates every row of it and keeps both with the version of the vehicle they belong to. */
export async function checkUploadedChart(
  database: Database,
  { organisationId, userId }: Pick<SessionUser, "organisationId" | "userId">,
  vehicle: LatestVehicle,
  { name, csv }: ChartInput,
): Promise<UploadResult> {
  const chart = parseChart(csv, vehicle.document);
  if (!chart.ok) {
    const errors = chart.error.map(({ line, column, message }) => ({
      path: column === "" ? `line ${line}` : `line ${line}, ${column}`,
      message,
    }));
    return { ok: false, error: { code: "unreadable", errors } };
  }
  const prepared = prepareVehicle(vehicle.document);
  if (!prepared.ok) throw new Error(`a stored vehicle cannot be prepared: ${prepared.error.code}`);
  const checked = checkChart(prepared.value, chart.value);
  if (!checked.ok) {
    const message = "message" in checked.error ? checked.error.message : checked.error.code;
    return { ok: false, error: { code: "unsolvable", message } };
  }
  const result: ChartResult = {
    rows: checked.value.map(({ row, agrees, value, unit, expected, message }) => ({
      line: row.line,
      point: row.point,
      against: row.against ?? null,
      function: row.function,
      condition: row.conditionText,
      expected,
      value: Number.isFinite(value) ? value : null,
      unit,
      agrees,
      message,
    })),
  };
  const stored = await database.charts.create({
    organisationId,
    vehicleVersionId: vehicle.versionId,
    name,
    csv,
    result,
    createdById: userId,
  });
  if (!stored.ok) throw new Error("the vehicle version of a chart disappeared while it was checked");
  const differs = result.rows.filter(({ agrees }) => !agrees).length;
  return { ok: true, value: { id: stored.value.id, differs, rows: result.rows.length } };
}
