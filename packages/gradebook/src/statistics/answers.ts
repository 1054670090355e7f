import { invalidInput, known, type Statistic } from "./result";

/** 1 right, 0 wrong, null not attempted. */
export type Answer = 0 | 1 | null;

/** Shape learners × items: one row a learner, one column an item, every row equally long. */
export type AnswerTable = readonly (readonly Answer[])[];

/** Shape learners × items, each entry the share of the item's points, 0 … 1; no gaps. */
export type ScoreTable = readonly (readonly number[])[];

/** The learners who attempted every item, and how many were left out because they did not. */
export function completeRows(table: AnswerTable): { readonly rows: ScoreTable; readonly leftOut: number } {
  const rows = table.flatMap((row) => {
    const scores = row.flatMap((answer) => (answer === null ? [] : [answer as number]));
    return scores.length === row.length ? [scores] : [];
  });
  return { rows, leftOut: table.length - rows.length };
}

/** The number of items, once every row has been found equally long and every entry found within 0 … 1. */
export function itemCount(table: ScoreTable | AnswerTable): Statistic<number> {
  const width = table[0]?.length ?? 0;
  for (const [row, entries] of table.entries()) {
    if (entries.length !== width) return invalidInput(`${row}`, `must have ${width} entries, as row 0 has`);
    const bad = entries.findIndex((entry) => entry !== null && !(entry >= 0 && entry <= 1));
    if (bad >= 0) return invalidInput(`${row}.${bad}`, "must be within 0 … 1");
  }
  return known(width);
}

/** The same check for answers that must be right or wrong and nothing between. */
export function dichotomousItemCount(table: ScoreTable | AnswerTable): Statistic<number> {
  for (const [row, entries] of table.entries()) {
    const bad = entries.findIndex((entry) => entry !== null && entry !== 0 && entry !== 1);
    if (bad >= 0) return invalidInput(`${row}.${bad}`, "must be 0 or 1");
  }
  return itemCount(table);
}

export function column(table: ScoreTable, item: number): number[] {
  return table.map((row) => row[item] ?? 0);
}

export function totals(table: ScoreTable): number[] {
  return table.map((row) => row.reduce((total, score) => total + score, 0));
}
