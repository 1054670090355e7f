import type { PivotOrder } from "./ordering";
import type { Pattern } from "./pattern";

/**
 * Everything about a factorisation that does not depend on values. Rows and columns are in pivot order.
 *
 * `lu` values lie row after row: L entries by ascending column, pivot, node columns of U, branch columns of U, ground
 * column. `target` lists, for every L entry (i, k) in turn, where in row i each off-pivot value of row k of U lands.
 */
export interface SymbolicFactor {
  readonly size: number;
  readonly order: PivotOrder;
  /** For each pattern entry its place in `lu`. */
  readonly place: Int32Array;
  readonly luLength: number;
  readonly lowerStart: Int32Array;
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
  readonly target: Int32Array;
}

/** Fill-in and update positions for a pivot order, by the row-wise (up-looking) symbolic elimination. */
export function analyse(pattern: Pattern, order: PivotOrder): SymbolicFactor {
  const { size, nodeCount } = pattern;
  const rowAt = invert(order.rows);
  const columnRank = invert(order.columns);
  const isNode = (rank: number) => order.columns[rank] < nodeCount;

  const given: number[][] = Array.from({ length: size }, () => []);
  for (let entry = 1; entry < pattern.rows.length; entry++) {
    const column = pattern.columns[entry];
    if (column < size) given[rowAt[pattern.rows[entry]]].push(columnRank[column]);
  }

  const upper: number[][] = [];
  const lower: number[][] = [];
  const seen = new Int32Array(size).fill(-1);
  const places: Map<number, number>[] = [];
  const columnAt: number[] = [-1];
  const lowerStart = new Int32Array(size + 1);
  const lowerColumn: number[] = [];
  const pivotPlace = new Int32Array(size);
  const nodeEnd = new Int32Array(size);
  const groundPlace = new Int32Array(size);
  const derived = new Uint8Array(size);
  const target: number[] = [];

  for (let row = 0; row < size; row++) {
    for (const column of given[row]) seen[column] = row;
    const l: number[] = [];
    for (let column = 0; column < row; column++) {
      if (seen[column] !== row) continue;
      l.push(column);
      for (const fill of upper[column]) seen[fill] = row;
    }
    const u: number[] = [];
    for (let column = row + 1; column < size; column++) if (seen[column] === row) u.push(column);
    u.sort((a, b) => Number(isNode(b)) - Number(isNode(a)) || a - b);
    lower.push(l);
    upper.push(u);

    const placeOf = new Map<number, number>();
    const put = (column: number): void => {
      placeOf.set(column, columnAt.length);
      columnAt.push(column);
    };
    lowerStart[row] = columnAt.length;
    for (const column of l) put(column);
    pivotPlace[row] = columnAt.length;
    for (const column of [row, ...u, size]) put(column);
    nodeEnd[row] = pivotPlace[row] + 1 + u.filter(isNode).length;
    groundPlace[row] = columnAt.length - 1;
    derived[row] = order.rows[row] === order.columns[row] && order.rows[row] < nodeCount ? 1 : 0;
    places.push(placeOf);
    for (const k of l) {
      lowerColumn.push(k);
      for (const column of [...(upper[k] ?? []), size]) target.push(placeOf.get(column) ?? 0);
    }
  }
  lowerStart[size] = columnAt.length;

  const place = new Int32Array(pattern.rows.length);
  for (let entry = 1; entry < place.length; entry++) {
    const column = pattern.columns[entry];
    const rank = column === size ? size : columnRank[column];
    place[entry] = places[rowAt[pattern.rows[entry]]].get(rank) ?? 0;
  }
  return {
    size,
    order,
    place,
    luLength: columnAt.length,
    lowerStart,
    lowerColumn: Int32Array.from(lowerColumn),
    pivotPlace,
    nodeEnd,
    groundPlace,
    columnAt: Int32Array.from(columnAt),
    derived,
    target: Int32Array.from(target),
  };
}

function invert(permutation: Int32Array): Int32Array {
  const inverse = new Int32Array(permutation.length);
  for (let k = 0; k < permutation.length; k++) inverse[permutation[k]] = k;
  return inverse;
}
