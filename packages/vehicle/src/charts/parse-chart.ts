import { type CsvRecord, readCsvRecords } from "../csv-records";
import type { VehicleDocument } from "../document/vehicle-document";
import { createVehicleIndex, type VehicleIndex } from "../document/vehicle-index";
import { parsePoint } from "../points/point-ids";
import { err, ok, type Result } from "../result";
import {
  type ChartColumn,
  type ChartUnit,
  chartColumns,
  chartUnits,
  requiredColumns,
  toColumn,
  toNumber,
  toUnit,
} from "./chart-columns";
import type { ChartReading } from "./measure-row";
import { parseConditions } from "./parse-conditions";

/** One row of an author's own chart, ready to be simulated. `low` and `high` are in `unit`; one of them may be absent. */
export interface ParsedChartRow extends ChartReading {
  /** Line in the file, from 1. */
  readonly line: number;
  readonly function: string;
  readonly conditionText: string;
  readonly low?: number;
  readonly high?: number;
  readonly unit: ChartUnit;
}

export interface ParsedChart {
  readonly rows: readonly ParsedChartRow[];
}

/** What is wrong in the file, where, and what would be right. */
export interface ChartProblem {
  readonly line: number;
  /** The column's header as written, or its usual name; empty when the whole line is meant. */
  readonly column: string;
  readonly message: string;
}

/**
 * Reads a terminal chart from CSV text. Columns, in any order and any case:
 *
 *   terminal       test point id (`X10.3:h`), cavity (`X10.3`, its harness face), or for A a conductor or component (`W12`)
 *   function       what the terminal does, in words
 *   condition      title of a condition of this vehicle's charts, or `key=on; engineSpeed=800; unplugged=X10`
 *   expected low   lower limit; may be empty when there is none
 *   expected high  upper limit; may be empty when there is none
 *   unit           V, mV, Ω (ohm), kΩ (kohm) or A
 *   against        optional: where the black lead stands; the battery's negative post when empty
 *
 * Example:
 *   terminal,function,condition,expected low,expected high,unit
 *   X10.3,Ignition feed,"key=on; engineSpeed=0",11.5,12.9,V
 *
 * Header words may also be point, pin, cavity; description, signal; conditions, state, when; low, min, minimum; high, max,
 * maximum; units; reference, black lead. Cells are parted by comma, semicolon or tab; a byte-order mark, decimal commas
 * (quoted where the comma parts cells), empty lines and further columns are tolerated.
 *
 * Errors: every problem in the file at once, with line and column.
 */
export function parseChart(csv: string, document: VehicleDocument): Result<ParsedChart, ChartProblem[]> {
  const records = readCsvRecords(csv);
  if (!records.ok) return err([{ column: "", ...records.error }]);
  const [header, ...lines] = records.value;
  if (!header)
    return err([
      {
        line: 1,
        column: "",
        message: `the file is empty; the first line names the columns ${listColumns()}`,
      },
    ]);
  const columns = readHeader(header);
  if (!columns.ok) return columns;
  const index = createVehicleIndex(document);
  const problems: ChartProblem[] = [];
  const rows = lines.flatMap((record) => {
    const cells = new RowCells(record, columns.value, header.cells, problems);
    const row = readRow(cells, document, index);
    return row ? [row] : [];
  });
  if (lines.length === 0)
    problems.push({ line: header.line, column: "", message: "there is no row below the header" });
  return problems.length === 0 ? ok({ rows }) : err(problems);
}

const listColumns = (): string => "terminal, function, condition, expected low, expected high, unit";

function readHeader(header: CsvRecord): Result<ReadonlyMap<ChartColumn, number>, ChartProblem[]> {
  const columns = new Map<ChartColumn, number>();
  const problems: ChartProblem[] = [];
  header.cells.forEach((cell, position) => {
    const column = toColumn(cell);
    if (!column) return;
    if (columns.has(column))
      problems.push({ line: header.line, column: cell, message: `two columns mean ${column}; keep one` });
    else columns.set(column, position);
  });
  for (const column of requiredColumns)
    if (!columns.has(column))
      problems.push({
        line: header.line,
        column,
        message: `the column ${column} is missing; it may be headed ${chartColumns[column].join(", ")}`,
      });
  return problems.length === 0 ? ok(columns) : err(problems);
}

/** The cells of one line by column, collecting what is wrong with them. */
class RowCells {
  constructor(
    readonly record: CsvRecord,
    private readonly columns: ReadonlyMap<ChartColumn, number>,
    private readonly header: readonly string[],
    private readonly problems: ChartProblem[],
  ) {}

  text(column: ChartColumn): string {
    const position = this.columns.get(column);
    return position === undefined ? "" : (this.record.cells[position] ?? "").trim();
  }

  refuse(column: ChartColumn, message: string): undefined {
    const position = this.columns.get(column);
    const name = (position === undefined ? undefined : this.header[position]) ?? column;
    this.problems.push({ line: this.record.line, column: name, message });
    return undefined;
  }
}

function readRow(
  cells: RowCells,
  document: VehicleDocument,
  index: VehicleIndex,
): ParsedChartRow | undefined {
  const unit = toUnit(cells.text("unit"));
  if (!unit) cells.refuse("unit", `"${cells.text("unit")}" is no unit of a chart; write V, mV, Ω, kΩ or A`);
  const quantity = unit && chartUnits[unit].quantity;
  const point = readPlace("terminal", cells, index, quantity === "amps");
  const againstText = cells.text("against");
  const against = againstText === "" ? undefined : readPlace("against", cells, index, false);
  const name = cells.text("function");
  if (name === "") cells.refuse("function", "say in a word or two what this terminal does");
  const conditionText = cells.text("condition");
  const conditions = parseConditions(conditionText, document, index);
  if (!conditions.ok) cells.refuse("condition", conditions.error);
  const low = readLimit("low", cells);
  const high = readLimit("high", cells);
  if (cells.text("low") === "" && cells.text("high") === "")
    cells.refuse("low", "give at least one limit, expected low or expected high");
  const crossed = low !== undefined && high !== undefined && low > high;
  if (crossed) cells.refuse("high", `expected high ${high} lies below expected low ${low}`);
  if (!unit || !quantity || !point || !conditions.ok || crossed) return undefined;
  return {
    line: cells.record.line,
    point,
    ...(against === undefined ? {} : { against }),
    quantity,
    function: name,
    conditionText,
    conditions: conditions.value.conditions,
    unplugged: conditions.value.unplugged,
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    unit,
  };
}

function readLimit(column: "low" | "high", cells: RowCells): number | undefined {
  const text = cells.text(column);
  if (text === "") return undefined;
  return toNumber(text) ?? cells.refuse(column, `"${text}" is no figure; write it like 4.5 or 4,5`);
}

/** Component kinds with two ends, whose current a chart can ask for. */
const carriers = ["fuse", "motor", "lamp", "resistor", "diode", "thermistor", "battery", "chargingSource"];

function readPlace(
  column: "terminal" | "against",
  cells: RowCells,
  index: VehicleIndex,
  carriesCurrent: boolean,
): string | undefined {
  const text = cells.text(column).replace(/\s/g, "");
  if (carriesCurrent) {
    const kind = index.components.get(text)?.kind;
    return index.conductors.has(text) || (kind !== undefined && carriers.includes(kind))
      ? text
      : cells.refuse(
          column,
          `a current flows through a conductor or component, such as W12 or M1, not "${text}"`,
        );
  }
  for (const id of [text, `${text}:h`, `${text}:ring`]) if (parsePoint(id, index)) return id;
  return cells.refuse(
    column,
    `there is no terminal "${text}"; write a cavity such as X10.3, or A1:T1, or body`,
  );
}
