export interface TableRow {
  /** Line of the file, counted from 1. */
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
}

export type ParsedTable =
  | { readonly ok: true; readonly rows: readonly TableRow[] }
  | { readonly ok: false; readonly line: number; readonly message: string };

/** A column and the other words it is known by, all in small letters. */
export type Columns = Readonly<Record<string, readonly string[]>>;

/**
 * Reads a list as spreadsheets write it: the first line names the columns in any order; cells are parted by commas,
 * semicolons or tabs and may stand in quotes (RFC 4180). Columns that are not known are passed over; a `required` one that
 * is missing is said.
 */
export function parseTable(text: string, columns: Columns, required: readonly string[]): ParsedTable {
  const lines = text.replace(/^\uFEFF/, "").split(/\r?\n/);
  const first = lines.findIndex((line) => line.trim() !== "");
  if (first === -1) return { ok: true, rows: [] };
  const header = lines[first] ?? "";
  const separator = [";", "\t", ","].find((sign) => header.includes(sign)) ?? ",";
  const names = splitLine(header, separator).map((cell) => {
    const word = cell.toLowerCase();
    return Object.keys(columns).find((name) => name === word || columns[name]?.includes(word));
  });
  const missing = required.filter((name) => !names.includes(name));
  if (missing.length > 0)
    return {
      ok: false,
      line: first + 1,
      message: `the first line must name the columns; missing: ${missing.join(", ")}`,
    };
  const rows = lines.flatMap((line, index) => {
    if (index <= first || line.trim() === "") return [];
    const cells: Record<string, string> = {};
    splitLine(line, separator).forEach((cell, position) => {
      const name = names[position];
      if (name !== undefined) cells[name] = cell;
    });
    return Object.values(cells).every((cell) => cell === "") ? [] : [{ line: index + 1, cells }];
  });
  return { ok: true, rows };
}

function splitLine(line: string, separator: string): string[] {
  const cells: string[] = [];
  let cell = "";
  let quoted = false;
  for (let at = 0; at < line.length; at++) {
    const letter = line.charAt(at);
    if (quoted && letter === '"' && line.charAt(at + 1) === '"') {
      cell += '"';
      at += 1;
    } else if (letter === '"') quoted = !quoted;
    else if (letter === separator && !quoted) {
      cells.push(cell.trim());
      cell = "";
    } else cell += letter;
  }
  return [...cells, cell.trim()];
}
