import "server-only";
import { setImmediate } from "node:timers/promises";
import {
  prepareVehicle,
  startState,
  terminalChart,
  testPoints,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import { type ChartRows, chartRowSchema } from "@/features/papers/papers-view";
import { BoundedCache } from "../services/attempts/bounded-cache";
import { formatOhms, formatVolts } from "./chart-value";

const made = new BoundedCache<Promise<ChartRows>>(96);
let last: Promise<unknown> = Promise.resolve();

/**
 * The terminal chart of one system, simulated on the vehicle as it leaves the works. Worked out when it is first asked
 * for, one system at a time with a breath in between, so that requests that need no chart go on.
 */
export function chartRowsOf(
  versionId: string,
  document: VehicleDocument,
  systemId: string,
): Promise<ChartRows> {
  const key = `${versionId}/${systemId}`;
  const known = made.get(key);
  if (known !== undefined) return known;
  const rows = last.then(async () => {
    await setImmediate();
    return chartOf(document, systemId);
  });
  last = rows.catch(() => made.delete(key));
  made.set(key, rows);
  return rows;
}

function chartOf(document: VehicleDocument, systemId: string): ChartRows {
  const healthy = prepareVehicle(document);
  if (!healthy.ok) throw new Error(`the vehicle ${document.id} cannot be simulated: ${healthy.error.code}`);
  const state = startState(healthy.value);
  if (!state.ok) throw new Error(`the vehicle ${document.id} does not settle: ${state.error.code}`);
  const chart = terminalChart(healthy.value, systemId);
  if (!chart.ok) throw new Error(`the chart of ${document.id} cannot be worked out: ${chart.error.code}`);
  const titles = new Map(testPoints(healthy.value, state.value).map(({ id, title }) => [id, title]));
  return chart.value.map(({ row, value, unit }, index) =>
    chartRowSchema.parse({
      key: String(index),
      point: row.point,
      pointTitle: titles.get(row.point) ?? row.point,
      againstTitle: row.against === undefined ? "" : (titles.get(row.against) ?? row.against),
      function: row.function,
      conditionTitle: row.conditionTitle,
      unplugged: row.unplugged ?? [],
      value: unit === "V" ? formatVolts(value) : formatOhms(value),
    }),
  );
}
