import type { z } from "zod";
import type { chartRowSchema } from "../document/vehicle-document";
import { err, ok, type Result } from "../result";
import type { PreparedVehicle, VehicleError } from "../simulation/types";
import { ChartReader } from "./measure-row";

export type ChartRow = z.infer<typeof chartRowSchema>;

export interface ChartValue {
  readonly row: ChartRow;
  /** In V or Ω; `Infinity` for an open. */
  readonly value: number;
  readonly unit: "V" | "Ω";
}

/**
 * The terminal chart of a system with the value each row reads on this vehicle, faults included.
 * Errors: `unknown_id` for a system the document does not have; those of `settle`.
 */
export function terminalChart(
  vehicle: PreparedVehicle,
  systemId: string,
): Result<ChartValue[], VehicleError> {
  const system = vehicle.document.systems.find(({ id }) => id === systemId);
  if (!system) return err({ code: "unknown_id", path: systemId, message: `there is no system ${systemId}` });
  const reader = new ChartReader(vehicle);
  const values: ChartValue[] = [];
  for (const row of system.chart) {
    const value = reader.read(row);
    if (!value.ok) return value;
    values.push({ row, value: value.value, unit: row.quantity === "volts" ? "V" : "Ω" });
  }
  return ok(values);
}
