import "server-only";
import { prepareVehicle, terminalChart, type VehicleDocument } from "@probeworthy/vehicle";

/** So many rows show every column at work. */
const rowLimit = 12;

/**
 * The first rows of a vehicle's own chart in the form an author writes one, with limits around what the vehicle reads.
 * Checked again it agrees with itself, except that rounding may touch a limit.
 */
export function exampleChart(document: VehicleDocument): string {
  const prepared = prepareVehicle(document);
  if (!prepared.ok) throw new Error(`a stored vehicle cannot be prepared: ${prepared.error.code}`);
  const lines = document.systems.flatMap((system) => {
    const chart = terminalChart(prepared.value, system.id);
    if (!chart.ok) throw new Error(`the chart of ${document.id} cannot be worked out: ${chart.error.code}`);
    return chart.value
      .filter(({ value }) => Number.isFinite(value))
      .map(({ row, value, unit }) => {
        const slack = unit === "V" ? Math.max(0.1, 0.03 * Math.abs(value)) : Math.max(0.5, 0.1 * value);
        const low = unit === "Ω" ? Math.max(0, value - slack) : value - slack;
        const conditions = [
          ...Object.entries(row.conditions).map(([name, set]) => `${name}=${set}`),
          ...(row.unplugged === undefined || row.unplugged.length === 0
            ? []
            : [`unplugged=${row.unplugged.join("+")}`]),
        ];
        return [
          row.point,
          row.function,
          conditions.join("; "),
          low.toFixed(2),
          (value + slack).toFixed(2),
          unit,
          row.against ?? "",
        ];
      });
  });
  const header = ["terminal", "function", "condition", "expected low", "expected high", "unit", "against"];
  return [header, ...lines.slice(0, rowLimit)].map((line) => line.map(quoted).join(",")).join("\r\n");
}

const quoted = (cell: string): string => (/[",;\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
