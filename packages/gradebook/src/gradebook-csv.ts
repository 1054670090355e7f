import { stringify } from "csv-stringify/browser/esm/sync";
import { harmless } from "./csv-text";
import type { GradebookMatrix } from "./matrix";

export interface CsvOptions {
  /** Spreadsheets of most of Europe expect `;` with decimal commas. */
  readonly separator?: "," | ";";
  readonly decimalComma?: boolean;
}

/**
 * The gradebook as CSV (RFC 4180, CRLF, UTF-8 with a byte-order mark so that spreadsheets read names rightly): name,
 * address, one column for each assignment, total. An empty cell is not graded yet; a missing one is 0.
 * A text that a spreadsheet would take for a formula (it begins with =, +, -, @, tab or return) gets an apostrophe
 * in front; numbers are left as numbers.
 */
export function gradebookCsv(matrix: GradebookMatrix, options: CsvOptions = {}): string {
  const { separator = ",", decimalComma = false } = options;
  const figure = (percent: number | null): string =>
    percent === null ? "" : percent.toFixed(1).replace(".", decimalComma ? "," : ".");
  const header = ["Name", "Email", ...matrix.assignments.map(({ title }) => title), "Total %"];
  const rows = matrix.rows.map(({ learner, cells, total }) => [
    learner.name,
    learner.email,
    ...cells.map(({ percent, state }) => figure(state === "missing" ? 0 : percent)),
    figure(total),
  ]);
  return stringify(
    [header, ...rows].map((row) => row.map(harmless)),
    {
      delimiter: separator,
      record_delimiter: "windows",
      bom: true,
    },
  );
}
