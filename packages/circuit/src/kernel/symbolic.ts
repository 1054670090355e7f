import { type Indices, packIndices } from "./indices";
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
  readonly luLength: number;
  /** Start of row i in `lu`; it ends with the ground column. */
  readonly lowerStart: Indices;
  /** Columns of the L entries of all rows one after the other; those of row i start at lowerColumnStart[i]. */
  readonly lowerColumnStart: Indices;
  readonly lowerColumn: Indices;
  readonly pivotPlace: Indices;
  /** End of the node columns of U in row i; they start right after the pivot. */
  readonly nodeEnd: Indices;
  /** Place of the ground column in row i, one past the branch columns of U. */
  readonly groundPlace: Indices;
  /** Column of each place of `lu`; `size` for ground. */
  readonly columnAt: Indices;
  /** 1 where the pivot is derived from the row sum instead of by subtraction. */
  readonly derived: Uint8Array;
  readonly targetStart: Uint32Array;
  readonly target: Indices;
  /**
   * Rows i (in the network's numbering) with an L entry in column k, which change when row k does, without those that
   * change with another of them anyway.
   */
  readonly dependents: IndexLists;
  /** Rows before this one have no L entries. */
  readonly firstLower: number;
  /** The edge whose conductance, taken negative, is the value of each place of `lu`; the number of edges for none. */
  readonly edgeAt: Indices;
  /** By row, further edges beside the first of a place, and their places. */
  readonly minusEdge: IndexLists;
  readonly minusPlace: Indices;
  /** By row, the edges to add at `diagonalPlace`: all that meet it, or none where the pivot is derived. */
  readonly plusEdge: IndexLists;
  /** Place of a node's own column in its row, 0 where it is derived or the row is not a node's. */
  readonly diagonalPlace: Indices;
  /** Additions, multiplications and divisions of computing each row, and of one solution with the factors. */
  readonly rowOperations: Uint32Array;
  readonly solveOperations: number;
  /** By row, the stamped entries and where each one goes. */
  readonly stampedEntry: IndexLists;
  readonly stampedPlace: Indices;
}

/** A list for each row, one after the other; that of row i from start[i] to start[i + 1]. */
export interface IndexLists {
  readonly start: Indices;
  readonly items: Indices;
}

/** Fill-in and update positions for a pivot order, by the row-wise (up-looking) symbolic elimination. */
export function analyse(pattern: Pattern, order: PivotOrder): SymbolicFactor {
  const { size, nodeCount, edges } = pattern;
  const rowAt = invert(order.rows);
  const columnRank = invert(order.columns);
  const isNode = (rank: number) => order.columns[rank] < nodeCount;
  const rankOf = (column: number) => (column === size ? size : columnRank[column]);

  const given: number[][] = Array.from({ length: size }, () => []);
  for (let entry = 1; entry < pattern.rows.length; entry++) given[rowAt[pattern.rows[entry]]].push(entry);
  const meeting: (readonly [edge: number, other: number])[][] = Array.from({ length: size }, () => []);
  for (const [edge, [a, b]] of edges.entries()) {
    if (a === b) continue;
    if (a < size) meeting[rowAt[a]].push([edge, b]);
    if (b < size) meeting[rowAt[b]].push([edge, a]);
  }

  const upper: number[][] = [];
  const lower: number[][] = [];
  const columnAt: number[] = [-1];
  const lowerStart = new Int32Array(size + 1);
  const pivotPlace = new Int32Array(size);
  const nodeEnd = new Int32Array(size);
  const groundPlace = new Int32Array(size);
  const diagonalPlace = new Int32Array(size);
  const derived = new Uint8Array(size);
  const targetStart = new Uint32Array(size + 1);
  const target: number[] = [];
  const edgeAt: number[] = [];
  const minus: number[][] = [];
  const minusPlace: number[] = [];
  const plus: number[][] = [];
  const stamped: number[][] = [];
  const stampedPlace: number[] = [];
  const placeOf = new Int32Array(size + 1);
  const seen = new Int32Array(size).fill(-1);
  const queue = createRankQueue();

  for (let row = 0; row < size; row++) {
    const l: number[] = [];
    const u: number[] = [];
    const meet = (column: number): void => {
      if (seen[column] === row) return;
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

    lowerStart[row] = columnAt.length;
    for (const column of [...l, row, ...u, size]) placeOf[column] = columnAt.push(column) - 1;
    pivotPlace[row] = lowerStart[row] + l.length;
    nodeEnd[row] = pivotPlace[row] + 1 + u.filter(isNode).length;
    groundPlace[row] = columnAt.length - 1;
    const node = order.rows[row];
    derived[row] = node === order.columns[row] && node < nodeCount ? 1 : 0;
    if (derived[row] === 0 && node < nodeCount) diagonalPlace[row] = placeOf[columnRank[node]];
    for (const k of l) {
      for (const column of upper[k]) target.push(placeOf[column]);
      target.push(placeOf[size]);
    }
    targetStart[row + 1] = target.length;
    const beside: number[] = [];
    for (const [edge, other] of meeting[row]) {
      const place = placeOf[rankOf(other)];
      if (edgeAt[place] === undefined) edgeAt[place] = edge;
      else {
        beside.push(edge);
        minusPlace.push(place);
      }
    }
    minus.push(beside);
    plus.push(derived[row] === 1 ? [] : meeting[row].map(([edge]) => edge));
    const entries = given[row].filter((entry) => pattern.isStamped[entry] === 1);
    stamped.push(entries);
    for (const entry of entries) stampedPlace.push(placeOf[rankOf(pattern.columns[entry])]);
  }
  lowerStart[size] = columnAt.length;
  columnAt[0] = 0;
  const firstLower = lower.findIndex((columns) => columns.length > 0);

  const rowOperations = Uint32Array.from(lower, (columns, row) => {
    const updates = targetStart[row + 1] - targetStart[row];
    const pivotSum = derived[row] === 1 ? nodeEnd[row] - pivotPlace[row] : 0;
    return 2 * updates + columns.length + pivotSum + 1;
  });
  const entries = lower.reduce((sum, columns, row) => sum + columns.length + upper[row].length, 0);
  const largest = Math.max(columnAt.length, pattern.rows.length, 2 * edges.length, size);
  const pack = (list: ArrayLike<number>): Indices => packIndices(list, largest);
  const list = (rows: readonly (readonly number[])[]): IndexLists => ({
    start: pack(startsOf(rows)),
    items: pack(rows.flat()),
  });
  return {
    size,
    order,
    luLength: columnAt.length,
    lowerStart: pack(lowerStart),
    lowerColumnStart: pack(startsOf(lower)),
    lowerColumn: pack(lower.flat()),
    pivotPlace: pack(pivotPlace),
    nodeEnd: pack(nodeEnd),
    groundPlace: pack(groundPlace),
    columnAt: pack(columnAt),
    derived,
    targetStart,
    target: pack(target),
    rowOperations,
    solveOperations: 2 * entries + size,
    dependents: list(listDependents(lower, order)),
    firstLower: firstLower < 0 ? size : firstLower,
    edgeAt: pack(columnAt.map((_, place) => edgeAt[place] ?? edges.length)),
    minusEdge: list(minus),
    minusPlace: pack(minusPlace),
    plusEdge: list(plus),
    diagonalPlace: pack(diagonalPlace),
    stampedEntry: list(stamped),
    stampedPlace: pack(stampedPlace),
  };
}

/** Where each row's list starts when they lie one after the other, and where the last one ends. */
function startsOf(rows: readonly (readonly number[])[]): number[] {
  const starts = [0];
  let end = 0;
  for (const row of rows) {
    end += row.length;
    starts.push(end);
  }
  return starts;
}

/** The columns of L as rows of the network, as far as SymbolicFactor lists them. */
function listDependents(lower: readonly number[][], order: PivotOrder): number[][] {
  const dependents: number[][] = lower.map(() => []);
  lower.forEach((columns, row) => {
    for (const k of columns) dependents[k].push(row);
  });
  const sets = dependents.map((rows) => new Set(rows));
  return dependents.map((rows) => {
    const kept: number[] = [];
    for (const row of rows) if (!kept.some((other) => sets[other].has(row))) kept.push(row);
    return kept.map((row) => order.rows[row]);
  });
}

function invert(permutation: Int32Array): Int32Array {
  const inverse = new Int32Array(permutation.length);
  for (let k = 0; k < permutation.length; k++) inverse[permutation[k]] = k;
  return inverse;
}
