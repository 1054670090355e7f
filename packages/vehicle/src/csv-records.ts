import { CsvError, parse } from "csv-parse/sync";
import { err, ok, type Result } from "./result";

export interface CsvRecord {
  /** Line of the file it ends on, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** The separator (comma, semicolon or tab) that parts the header line into most cells. */
function findDelimiter(csv: string): string {
  const header =
    csv
      .replace(/^\uFEFF/, "")
      .split(/\r?\n|\r/)
      .find((line) => line.trim() !== "") ?? "";
  const count = (separator: string): number => header.replace(/"[^"]*"/g, "").split(separator).length;
  return [",", ";", "\t"].reduce((best, separator) => (count(separator) > count(best) ? separator : best));
}

/**
 * Records of a text in the form of RFC 4180, or of a spreadsheet that parts cells by semicolon or tab. A byte-order mark,
 * spaces around cells, empty lines and records of unequal length are tolerated. Errors: the line whose quotes do not pair.
 */
export function readCsvRecords(csv: string): Result<CsvRecord[], { line: number; message: string }> {
  const records: CsvRecord[] = [];
  try {
    parse(csv, {
      bom: true,
      delimiter: findDelimiter(csv),
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      on_record: (cells: string[], { lines }) => {
        if (cells.some((cell) => cell !== "")) records.push({ line: lines, cells });
        return null;
      },
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error.lines === "number" ? error.lines : records.length + 1;
    const message = "the quotes on this line do not pair; write a quote inside a quoted cell twice";
    return err({ line, message });
  }
  return ok(records);
}
