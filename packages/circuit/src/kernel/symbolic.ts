import type { PivotOrder } from "./ordering";
import type { Pattern } from "./pattern";
import { createRankQueue } from "./rank-queue";

/**
 * Everything about a factorisation that does not depend on values. Rows and columns are in pivot order.
 *
 * `lu` values lie row after row: L entries by ascending column, pivot, node columns of U, branch columns of U, ground
 * column. `target` lists, for every L entry (i, k) in turn, where in row i each off-pivot value of row k of U lands.
 */
export interface SymbolicFactor {
  readonly size: number;
  readonly order: PivotOrder;
  /** Pattern entries of row i are rowEntry[rowEntryStart[i] … rowEntryStart[i + 1]), rowPlace tells where each goes in `lu`. */
  readonly rowEntryStart: Int32Array;
  readonly rowEntry: Int32Array;
  readonly rowPlace: Int32Array;
  readonly luLength: number;
  /** Start of row i in `lu`; row i + 1 starts where it ends. */
  readonly lowerStart: Int32Array;
  /** Columns of the L entries of all rows one after the other; those of row i start at lowerColumnStart[i]. */
  readonly lowerColumnStart: Int32Array;
  readonly lowerColumn: Int32Array;
  readonly pivotPlace: Int32Array;
  /** End of the node columns of U in row i; they start right after the pivot. */
  readonly nodeEnd: Int32Array;
  /** Place of the ground column in row i, one past the branch columns of U. */
  readonly groundPlace: Int32Array;
  /** Column of each place of `lu`; `size` for ground. */
  readonly columnAt: Int32Array;
  /** 1 where the pivot is derived from the row sum instead of by subtraction. */
  readonly derived: Uint8Array;
  readonly targetStart: Int32Array;
  readonly target: Int32Array;
  /** Rows i (in the network's numbering) with an L entry in column k: those that change when row k does. */
  readonly dependentStart: Int32Array;
  readonly dependentRow: Int32Array;
}

/** Fill-in and update positions for a pivot order, by the row-wise (up-looking) symbolic elimination. */
export function analyse(pattern: Pattern, order: PivotOrder): SymbolicFactor {
  const { size, nodeCount } = pattern;
  const rowAt = invert(order.rows);
  const columnRank = invert(order.columns);
  const isNode = (rank: number) => order.columns[rank] < nodeCount;

  const given: number[][] = Array.from({ length: size }, () => []);
  for (let entry = 1; entry < pattern.rows.length; entry++) given[rowAt[pattern.rows[entry]]].push(entry);

  const upper: number[][] = [];
  const lower: number[][] = [];
  const columnAt: number[] = [-1];
  const lowerStart = new Int32Array(size + 1);
  const lowerColumnStart = new Int32Array(size + 1);
  const pivotPlace = new Int32Array(size);
  const nodeEnd = new Int32Array(size);
  const groundPlace = new Int32Array(size);
  const derived = new Uint8Array(size);
  const targetStart = new Int32Array(size + 1);
  const target: number[] = [];
  const rowEntryStart = new Int32Array(size + 1);
  const rowEntry: number[] = [];
  const rowPlace: number[] = [];
  const placeOf = new Int32Array(size + 1);
  const seen = new Int32Array(size).fill(-1);
  const queue = createRankQueue();

  for (let row = 0; row < size; row++) {
    const l: number[] = [];
    const u: number[] = [];
    const meet = (column: number): void => {
      if (column === size || seen[column] === row) return;
      seen[column] = row;
      if (column < row) queue.push(column);
      else if (column > row) u.push(column);
    };
    for (const entry of given[row]) {
      const column = pattern.columns[entry];
      if (column < size) meet(columnRank[column]);
    }
    for (let k = queue.pop(); k >= 0; k = queue.pop()) {
      l.push(k);
      for (const fill of upper[k]) meet(fill);
    }
    u.sort((a, b) => Number(isNode(b)) - Number(isNode(a)) || a - b);
    lower.push(l);
    upper.push(u);

    const put = (column: number): void => {
      placeOf[column] = columnAt.push(column) - 1;
    };
    lowerStart[row] = columnAt.length;
    for (const column of l) put(column);
    pivotPlace[row] = columnAt.length;
    for (const column of [row, ...u, size]) put(column);
    nodeEnd[row] = pivotPlace[row] + 1 + u.filter(isNode).length;
    groundPlace[row] = columnAt.length - 1;
    derived[row] = order.rows[row] === order.columns[row] && order.rows[row] < nodeCount ? 1 : 0;
    lowerColumnStart[row + 1] = lowerColumnStart[row] + l.length;
    for (const k of l) {
      for (const column of upper[k]) target.push(placeOf[column]);
      target.push(placeOf[size]);
    }
    targetStart[row + 1] = target.length;
    for (const entry of given[row]) {
      const column = pattern.columns[entry];
      rowEntry.push(entry);
      rowPlace.push(placeOf[column === size ? size : columnRank[column]]);
    }
    rowEntryStart[row + 1] = rowEntry.length;
  }
  lowerStart[size] = columnAt.length;
  return {
    size,
    order,
    rowEntryStart,
    rowEntry: Int32Array.from(rowEntry),
    rowPlace: Int32Array.from(rowPlace),
    luLength: columnAt.length,
    lowerStart,
    lowerColumnStart,
    lowerColumn: Int32Array.from(lower.flat()),
    pivotPlace,
    nodeEnd,
    groundPlace,
    columnAt: Int32Array.from(columnAt),
    derived,
    targetStart,
    target: Int32Array.from(target),
    ...listDependents(lower, order),
  };
}

/** The columns of L as rows of the network. */
function listDependents(lower: readonly number[][], order: PivotOrder) {
  const size = lower.length;
  const dependentStart = new Int32Array(size + 1);
  for (const columns of lower) for (const k of columns) dependentStart[k + 1]++;
  for (let k = 0; k < size; k++) dependentStart[k + 1] += dependentStart[k];
  const dependentRow = new Int32Array(dependentStart[size]);
  const filled = dependentStart.slice();
  lower.forEach((columns, row) => {
    for (const k of columns) dependentRow[filled[k]++] = order.rows[row];
  });
  return { dependentStart, dependentRow };
}

function invert(permutation: Int32Array): Int32Array {
  const inverse = new Int32Array(permutation.length);
  for (let k = 0; k < permutation.length; k++) inverse[permutation[k]] = k;
  return inverse;
}
