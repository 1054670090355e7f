import { emptyAsNull } from "@/features/forms/form-values";
import { setAt } from "../draft/path";
import type { FieldSpec } from "../fields/field-spec";
import { type Draft, newRecord, recordsOf } from "../fields/new-record";
import type { SectionName } from "../fields/section-specs";

/** Cells of a spreadsheet's clipboard: rows by line, cells by tab; a quoted cell may hold both (RFC 4180 quoting). */
export function parseCells(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = "";
  let quoted = false;
  const tidy = text.replace(/\r\n?/g, "\n").replace(/\n$/, "");
  for (let at = 0; at < tidy.length; at++) {
    const letter = tidy.charAt(at);
    if (quoted) {
      if (letter !== '"') cell += letter;
      else if (tidy.charAt(at + 1) === '"') {
        cell += '"';
        at += 1;
      } else quoted = false;
    } else if (letter === '"' && cell === "") quoted = true;
    else if (letter === "\t" || letter === "\n") {
      row.push(cell.trim());
      cell = "";
      if (letter === "\n") {
        rows.push(row);
        row = [];
      }
    } else cell += letter;
  }
  row.push(cell.trim());
  rows.push(row);
  return rows;
}

const isEmpty = (row: readonly string[]) => row.every((cell) => cell === "");

/** What a pasted cell is in the document. */
export function readCell(spec: FieldSpec, text: string): unknown {
  if (text === "" && spec.optional === true) return undefined;
  if (spec.type === "number") return emptyAsNull(text);
  if (spec.type === "names") return text.split(/[\s,;]+/).filter(Boolean);
  return text;
}

/**
 * The draft after a block of cells was pasted with its upper left corner at a cell. Rows that are not there yet are
 * added with a free name each; cells beyond the last column are dropped. Empty lines are passed over.
 */
export function pasteInto(
  draft: Draft,
  section: SectionName,
  columns: readonly FieldSpec[],
  corner: { readonly row: number; readonly column: number },
  cells: readonly (readonly string[])[],
): Draft {
  return cells
    .filter((row) => !isEmpty(row))
    .reduce((before, row, offset) => {
      const index = corner.row + offset;
      const present = recordsOf(before, section).length;
      const grown = index < present ? before : setAt(before, [section, present], newRecord(before, section));
      return row.reduce((next, cell, position) => {
        const spec = columns[corner.column + position];
        if (spec === undefined) return next;
        return setAt(next, [section, Math.min(index, present), spec.key], readCell(spec, cell));
      }, grown);
    }, draft);
}
