import { type CountBuckets, createCountBuckets } from "./count-buckets";
import type { Pattern } from "./pattern";

/** Pivot k of the elimination is the entry at (rows[k], columns[k]). */
export interface PivotOrder {
  readonly rows: Int32Array;
  readonly columns: Int32Array;
}

export type OrderingOutcome =
  | { readonly ok: true; readonly order: PivotOrder }
  | { readonly ok: false; readonly singularRow: number };

/** A pivot must be at least this part of the largest entry of its column, each row scaled by its largest entry. */
const threshold = 1e-3;
/** Markowitz search stops after this many rows that offered a pivot (Zlatev's strategy). */
const rowsToSearch = 4;

/**
 * Chooses a pivot order that keeps fill low: Markowitz counts with threshold pivoting, which on a network of
 * two-terminal conductances is minimum degree. Node rows are pivoted on their own diagonal or on a branch
 * current whenever one will do, because there the factorisation is free of cancellation.
 *
 * Sources: H. M. Markowitz, Management Science 3 (1957) 255; Z. Zlatev, SIAM J. Numer. Anal. 17 (1980) 18.
 */
export function choosePivotOrder(pattern: Pattern, values: Float64Array): OrderingOutcome {
  const { size } = pattern;
  const work = loadActiveMatrix(pattern, values);
  const buckets = createCountBuckets(size, size);
  for (let row = 0; row < size; row++) buckets.insert(row, work.cells[row].size);
  const order = { rows: new Int32Array(size), columns: new Int32Array(size) };
  for (let step = 0; step < size; step++) {
    const pivot = findPivot(work, buckets, false) ?? findPivot(work, buckets, true);
    if (!pivot) return { ok: false, singularRow: work.done.indexOf(0) };
    order.rows[step] = pivot.row;
    order.columns[step] = pivot.column;
    eliminate(work, buckets, pivot.row, pivot.column);
  }
  return { ok: true, order };
}

interface ActiveMatrix {
  readonly nodeCount: number;
  /** Per row: column → value; the ground column is apart. The diagonal of a node row is derived, see valueAt. */
  readonly cells: Map<number, number>[];
  readonly ground: Float64Array;
  readonly rowsOfColumn: Set<number>[];
  readonly rowScale: Float64Array;
  readonly done: Uint8Array;
}

function loadActiveMatrix(pattern: Pattern, values: Float64Array): ActiveMatrix {
  const { size, nodeCount, rows, columns } = pattern;
  const work: ActiveMatrix = {
    nodeCount,
    cells: Array.from({ length: size }, () => new Map<number, number>()),
    ground: new Float64Array(size),
    rowsOfColumn: Array.from({ length: size }, () => new Set<number>()),
    // A row of zeros must not divide by zero below.
    rowScale: new Float64Array(size).fill(Number.MIN_VALUE),
    done: new Uint8Array(size),
  };
  for (let entry = 1; entry < rows.length; entry++) {
    const row = rows[entry];
    const column = columns[entry];
    if (column === size) work.ground[row] = values[entry];
    else {
      work.cells[row].set(column, values[entry]);
      work.rowsOfColumn[column].add(row);
    }
    work.rowScale[row] = Math.max(work.rowScale[row], Math.abs(values[entry]));
  }
  return work;
}

/** Value at a place. A node row's diagonal is minus the sum of the row's other node columns, ground included. */
function valueAt(work: ActiveMatrix, row: number, column: number): number {
  const cells = work.cells[row];
  if (row !== column || row >= work.nodeCount) return cells.get(column) ?? 0;
  let sum = work.ground[row];
  for (const [other, value] of cells) if (other !== column && other < work.nodeCount) sum += value;
  return -sum;
}

function findPivot(work: ActiveMatrix, buckets: CountBuckets, anyColumn: boolean) {
  let best: { row: number; column: number } | undefined;
  let bestCost = Number.POSITIVE_INFINITY;
  let searched = 0;
  for (let count = 1; count <= work.cells.length; count++) {
    if (best && (count - 1) ** 2 >= bestCost) return best;
    for (let row = buckets.first(count); row >= 0; row = buckets.after(row)) {
      let offered = false;
      for (const column of work.cells[row].keys()) {
        const preferred = row === column || row >= work.nodeCount || column >= work.nodeCount;
        if (!preferred && !anyColumn) continue;
        const cost = (count - 1) * (work.rowsOfColumn[column].size - 1);
        if (cost > bestCost || (cost === bestCost && row !== column)) continue;
        if (!isLargeEnough(work, row, column)) continue;
        best = { row, column };
        bestCost = cost;
        offered = true;
      }
      if (offered && ++searched >= rowsToSearch) return best;
    }
  }
  return best;
}

function isLargeEnough(work: ActiveMatrix, row: number, column: number): boolean {
  const size = Math.abs(valueAt(work, row, column));
  if (!(size > 0)) return false;
  // A row or column with one entry left spreads no rounding error, however small the pivot.
  if (work.cells[row].size === 1 || work.rowsOfColumn[column].size === 1) return true;
  let largest = 0;
  for (const other of work.rowsOfColumn[column]) {
    largest = Math.max(largest, Math.abs(valueAt(work, other, column)) / work.rowScale[other]);
  }
  return size / work.rowScale[row] >= threshold * largest;
}

function eliminate(work: ActiveMatrix, buckets: CountBuckets, pivotRow: number, pivotColumn: number): void {
  const pivot = valueAt(work, pivotRow, pivotColumn);
  // Written out first: once the row's pivot column goes, its diagonal can no longer be derived.
  const source = [...work.cells[pivotRow].keys()].map(
    (column) => [column, valueAt(work, pivotRow, column)] as const,
  );
  buckets.remove(pivotRow);
  work.done[pivotRow] = 1;
  for (const [column] of source) work.rowsOfColumn[column].delete(pivotRow);
  for (const row of work.rowsOfColumn[pivotColumn]) {
    const factor = valueAt(work, row, pivotColumn) / pivot;
    const cells = work.cells[row];
    buckets.remove(row);
    for (const [column, value] of source) {
      if (column === pivotColumn) continue;
      cells.set(column, (cells.get(column) ?? 0) - factor * value);
      work.rowsOfColumn[column].add(row);
    }
    work.ground[row] -= factor * work.ground[pivotRow];
    cells.delete(pivotColumn);
    buckets.insert(row, cells.size);
  }
  work.rowsOfColumn[pivotColumn].clear();
}
