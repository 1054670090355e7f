import type { PivotOrder } from "./ordering";
import type { SymbolicFactor } from "./symbolic";

/**
 * The same pivots with the same fill in another sequence: first all that depend on none, then those that depend on
 * these alone, and so on, and within each such level by the lengths of their rows. The loops over the short rows of L
 * and U then mostly run as often as the time before, so that a processor foresees their end.
 */
export function orderByLevel(s: SymbolicFactor): PivotOrder {
  const { size, order, lowerColumnStart, lowerColumn, pivotPlace, groundPlace, columnAt } = s;
  const level = new Int32Array(size);
  for (let row = 0; row < size; row++) {
    // U(k, row) ≠ 0 has raised it already when an earlier k was met.
    for (let c = lowerColumnStart[row]; c < lowerColumnStart[row + 1]; c++)
      level[row] = Math.max(level[row], level[lowerColumn[c]] + 1);
    for (let at = pivotPlace[row] + 1; at < groundPlace[row]; at++) {
      const column = columnAt[at];
      level[column] = Math.max(level[column], level[row] + 1);
    }
  }
  const lower = (row: number) => lowerColumnStart[row + 1] - lowerColumnStart[row];
  const upper = (row: number) => groundPlace[row] - pivotPlace[row];
  const ranks = Array.from({ length: size }, (_, row) => row).sort(
    (a, b) => level[a] - level[b] || upper(a) - upper(b) || lower(a) - lower(b) || a - b,
  );
  return {
    rows: Int32Array.from(ranks, (rank) => order.rows[rank]),
    columns: Int32Array.from(ranks, (rank) => order.columns[rank]),
  };
}
