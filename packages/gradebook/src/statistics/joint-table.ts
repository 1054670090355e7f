import { type AnswerTable, completeRows, type ScoreTable } from "./answers";

export interface JointTable {
  /** Columns of the original table, in order. */
  readonly items: readonly number[];
  /** Learners who attempted all of these, shape learners × `items`. */
  readonly rows: ScoreTable;
  /** Learners left out because they attempted only some. */
  readonly leftOut: number;
}

/**
 * What can be analysed together: the items attempted by at least `leastAttempts` learners, and the learners who attempted
 * all of those. An item handed out last week, tried by three, would otherwise leave three learners for all the others.
 * Where fewer than two items have enough, all items are kept, so that the numbers say what is lacking.
 */
export function jointTable(table: AnswerTable, leastAttempts: number): JointTable {
  const all = [...(table[0] ?? []).keys()];
  const enough = all.filter(
    (item) => table.filter((row) => row[item] !== null && row[item] !== undefined).length >= leastAttempts,
  );
  const items = enough.length < 2 ? all : enough;
  const complete = completeRows(table.map((row) => items.map((item) => row[item] ?? null)));
  return { items, ...complete };
}
