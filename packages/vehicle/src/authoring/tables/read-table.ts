import { readCsvRecords } from "../../csv-records";
import { type Column, readHeaderCell } from "./table-columns";

/** What a spreadsheet's row needs, in words. */
export interface TableMessage {
  readonly table: "connectors" | "conductors";
  readonly severity: "error" | "warning";
  /** Line of the file, from 1; 0 when the whole file is meant. */
  readonly row: number;
  /** The column's usual name; empty when the whole row is meant. */
  readonly column: string;
  readonly message: string;
}

/** One row by column; a cell of an absent column is empty. */
export interface TableRow<Name extends string> {
  readonly row: number;
  readonly cells: Readonly<Record<Name, string>>;
}

export interface ReadTable<Name extends string> {
  readonly rows: readonly TableRow<Name>[];
  readonly present: ReadonlySet<Name>;
  /** Unit in a column's header, in small letters and digits: `mm2`, `awg`, `mm`. */
  readonly units: Readonly<Partial<Record<Name, string>>>;
}

/** A car has some thousand conductors. */
const rowLimit = 20_000;

/**
 * Reads a spreadsheet by the words of its header, in any order and case; columns that are not known are passed over. Of two
 * columns of one meaning the first counts. Messages are added to `messages`; without a required column no row is read.
 */
export function readTable<Name extends string>(
  table: TableMessage["table"],
  csv: string,
  columns: Readonly<Record<Name, Column>>,
  required: readonly (readonly NoInfer<Name>[])[],
  messages: TableMessage[],
): ReadTable<Name> {
  const units: Partial<Record<Name, string>> = {};
  const none: ReadTable<Name> = { rows: [], present: new Set(), units };
  const fail = (row: number, message: string): ReadTable<Name> => {
    messages.push({ table, severity: "error", row, column: "", message });
    return none;
  };
  const records = readCsvRecords(csv);
  if (!records.ok) return fail(records.error.line, records.error.message);
  const [header, ...body] = records.value;
  if (header === undefined) return none;
  if (body.length > rowLimit) return fail(0, `${body.length} rows are more than ${rowLimit}; part the file`);
  const names = Object.keys(columns) as Name[];
  const positions = new Map<Name, number>();
  header.cells.forEach((cell, position) => {
    const { word, unit } = readHeaderCell(cell);
    const name = names.find(
      (candidate) => word === candidate.toLowerCase() || columns[candidate].words.includes(word),
    );
    if (name === undefined || positions.has(name)) return;
    positions.set(name, position);
    if (unit !== "") units[name] = unit;
  });
  const missing = required.filter((choices) => choices.every((name) => !positions.has(name)));
  if (missing.length > 0) {
    const wanted = missing.map((choices) => choices.map((name) => columns[name].title).join(" or "));
    return fail(
      header.line,
      `the first row must name the columns; there is none for ${wanted.join(", ")}. It has ${header.cells.join(", ")}`,
    );
  }
  const rows = body.map(({ line, cells }): TableRow<Name> => {
    const of = (name: Name): string => cells[positions.get(name) ?? -1] ?? "";
    return {
      row: line,
      cells: Object.fromEntries(names.map((name) => [name, of(name)])) as Record<Name, string>,
    };
  });
  return { rows, present: new Set(positions.keys()), units };
}
