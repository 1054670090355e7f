import { ok, type Result } from "../result";
import type { PreparedVehicle, VehicleError } from "../simulation/types";
import { type ChartUnit, chartUnits } from "./chart-columns";
import { ChartReader } from "./measure-row";
import type { ParsedChart, ParsedChartRow } from "./parse-chart";

export interface CheckedChartRow {
  readonly row: ParsedChartRow;
  readonly agrees: boolean;
  /** What the vehicle reads, in the row's unit; `Infinity` for an open. */
  readonly value: number;
  readonly unit: ChartUnit;
  /** `2.30 to 2.70 V`. */
  readonly expected: string;
  /** One sentence for the author. */
  readonly message: string;
}

/** Slack for a reading that stands on a limit and differs in its last bits. */
const slack = 1e-9;

/**
 * Simulates every row of a chart and says whether the vehicle reads within its limits (both inclusive). A state that
 * several rows share is reached once. Errors: those of `startState` and `settle`.
 */
export function checkChart(
  vehicle: PreparedVehicle,
  chart: ParsedChart,
): Result<CheckedChartRow[], VehicleError> {
  const reader = new ChartReader(vehicle);
  const rows: CheckedChartRow[] = [];
  for (const row of chart.rows) {
    const reading = reader.read(row);
    if (!reading.ok) return reading;
    rows.push(judge(row, reading.value / chartUnits[row.unit].size));
  }
  return ok(rows);
}

function judge(row: ParsedChartRow, value: number): CheckedChartRow {
  const { low, high, unit } = row;
  const expected = formatExpected(low, high, unit);
  const tooLow = low !== undefined && value < low - slack * Math.max(1, Math.abs(low));
  const tooHigh = high !== undefined && value > high + slack * Math.max(1, Math.abs(high));
  const reads = `${row.point} reads ${formatValue(value)} ${unit}`;
  const verdict = tooLow
    ? `, below ${expected}`
    : tooHigh
      ? `, above ${expected}`
      : `, as expected (${expected})`;
  return { row, agrees: !tooLow && !tooHigh, value, unit, expected, message: `${reads}${verdict}` };
}

function formatExpected(low: number | undefined, high: number | undefined, unit: ChartUnit): string {
  if (low !== undefined && high !== undefined)
    return low === high ? `${low} ${unit}` : `${low} to ${high} ${unit}`;
  return low !== undefined ? `at least ${low} ${unit}` : `at most ${high} ${unit}`;
}

/** Four significant digits and no more than four decimals, as a good meter shows; an open reads OL. */
const formatValue = (value: number): string =>
  Number.isFinite(value) ? String(Number(Number(value.toPrecision(4)).toFixed(4))) : "OL";
