import type { SymbolicFactor } from "./symbolic";

/** Numeric values of one factorisation, over a shared symbolic one. Allocated once. */
export interface NumericFactor {
  readonly symbolic: SymbolicFactor;
  readonly lu: Float64Array;
  readonly inversePivot: Float64Array;
  readonly work: Float64Array;
  readonly tally: Tally;
}

/** Floating-point operations done so far. */
export interface Tally {
  operations: number;
}

export function allocateFactor(symbolic: SymbolicFactor, tally: Tally = { operations: 0 }): NumericFactor {
  return {
    symbolic,
    lu: new Float64Array(symbolic.luLength),
    inversePivot: new Float64Array(symbolic.size),
    work: new Float64Array(symbolic.size),
    tally,
  };
}

/** The values of a matrix, in the shares that SymbolicFactor knows how to put together. */
export interface MatrixValues {
  /** Conductance of each edge, and 0 after the last. */
  readonly siemens: Float64Array;
  /** What else goes into each of the pattern's entries. */
  readonly stamped: Float64Array;
  /** Leak to ground of each node, siemens, and a further one of all of them. */
  readonly leak: Float64Array;
  readonly shunt: number;
}

/**
 * Refactorises A = L·U as far as A has changed: only the rows that `stale` marks (by the network's numbering, marks are
 * taken off) and those that depend on them are computed again, to the very values that computing all would give.
 * Returns the row (network numbering) whose pivot is zero or not finite, or −1; after a failure everything is stale.
 *
 * Pivots of node rows are not formed by subtraction but as minus the sum of the other entries of the row of U with
 * the ground column. On a network of conductances every term has the same sign, so 1e-12 S beside 1e7 S is not lost.
 * Source: W. K. Grassmann, M. I. Taksar, D. P. Heyman, Operations Research 33 (1985) 1107.
 */
export function refactor(factor: NumericFactor, values: MatrixValues, stale: Uint8Array): number {
  const { symbolic: s, lu, inversePivot } = factor;
  const { rows } = s.order;
  const { start, items } = s.dependents;
  for (let row = 0; row < s.size; row++) {
    const name = rows[row];
    if (stale[name] === 0) continue;
    stale[name] = 0;
    loadRow(s, lu, values, row);
    const inverse = 1 / eliminateRow(s, lu, inversePivot, row);
    if (inverse === 0 || !Number.isFinite(inverse)) {
      stale.fill(1);
      return name;
    }
    inversePivot[row] = inverse;
    factor.tally.operations += s.rowOperations[row];
    const end = start[row + 1];
    for (let d = start[row]; d < end; d++) stale[items[d]] = 1;
  }
  return -1;
}

/** Puts row `row` of A together in its place in `lu`. */
function loadRow(s: SymbolicFactor, lu: Float64Array, values: MatrixValues, row: number): void {
  const { edgeAt, minusEdge, minusPlace, plusEdge, stampedEntry, stampedPlace } = s;
  const { siemens, stamped, leak, shunt } = values;
  const groundAt = s.groundPlace[row];
  for (let at = s.lowerStart[row]; at <= groundAt; at++) lu[at] = -siemens[edgeAt[at]];
  const name = s.order.rows[row];
  const leakage = name < leak.length ? leak[name] + shunt : 0;
  lu[groundAt] -= leakage;
  const minusEnd = minusEdge.start[row + 1];
  for (let e = minusEdge.start[row]; e < minusEnd; e++) lu[minusPlace[e]] -= siemens[minusEdge.items[e]];
  const diagonal = s.diagonalPlace[row];
  if (diagonal > 0) {
    let sum = leakage;
    const plusEnd = plusEdge.start[row + 1];
    for (let e = plusEdge.start[row]; e < plusEnd; e++) sum += siemens[plusEdge.items[e]];
    lu[diagonal] += sum;
  }
  const stampedEnd = stampedEntry.start[row + 1];
  for (let e = stampedEntry.start[row]; e < stampedEnd; e++)
    lu[stampedPlace[e]] += stamped[stampedEntry.items[e]];
}

/** Turns row `row` of A into that of L and U, and answers its pivot. */
function eliminateRow(s: SymbolicFactor, lu: Float64Array, inversePivot: Float64Array, row: number): number {
  const { lowerColumn, pivotPlace, groundPlace, target } = s;
  const pivotAt = pivotPlace[row];
  let t = s.targetStart[row];
  let c = s.lowerColumnStart[row];
  for (let at = s.lowerStart[row]; at < pivotAt; at++) {
    const k = lowerColumn[c++];
    const multiplier = lu[at] * inversePivot[k];
    lu[at] = multiplier;
    const end = groundPlace[k];
    for (let u = pivotPlace[k] + 1; u <= end; u++) lu[target[t++]] -= multiplier * lu[u];
  }
  if (s.derived[row] === 1) {
    let sum = lu[groundPlace[row]];
    const end = s.nodeEnd[row];
    for (let u = pivotAt + 1; u < end; u++) sum += lu[u];
    lu[pivotAt] = -sum;
  }
  return lu[pivotAt];
}

/** Solves A·solution = rightSide. `rightSide` is by row, `solution` by unknown; both may be longer than the system. */
export function solveFactored(factor: NumericFactor, rightSide: Float64Array, solution: Float64Array): void {
  const { symbolic: s, lu, inversePivot, work } = factor;
  const { lowerStart, lowerColumn, pivotPlace, groundPlace, columnAt, size } = s;
  const { rows, columns } = s.order;
  const { firstLower } = s;
  factor.tally.operations += s.solveOperations;
  for (let row = 0; row < firstLower; row++) work[row] = rightSide[rows[row]];
  let c = 0;
  for (let row = firstLower; row < size; row++) {
    let sum = rightSide[rows[row]];
    const end = pivotPlace[row];
    for (let at = lowerStart[row]; at < end; at++) sum -= lu[at] * work[lowerColumn[c++]];
    work[row] = sum;
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = work[row];
    const end = groundPlace[row];
    for (let at = pivotPlace[row] + 1; at < end; at++) sum -= lu[at] * work[columnAt[at]];
    sum *= inversePivot[row];
    work[row] = sum;
    solution[columns[row]] = sum;
  }
}
