import type { SymbolicFactor } from "./symbolic";

/** Numeric values of one factorisation, over a shared symbolic one. Allocated once. */
export interface NumericFactor {
  readonly symbolic: SymbolicFactor;
  readonly lu: Float64Array;
  readonly inversePivot: Float64Array;
  readonly work: Float64Array;
}

export function allocateFactor(symbolic: SymbolicFactor): NumericFactor {
  return {
    symbolic,
    lu: new Float64Array(symbolic.luLength),
    inversePivot: new Float64Array(symbolic.size),
    work: new Float64Array(symbolic.size),
  };
}

/**
 * Refactorises A = L·U from the values of the pattern's entries. Returns the row (original numbering) whose pivot is
 * zero or not finite, or −1.
 *
 * Pivots of node rows are not formed by subtraction but as minus the sum of the other entries of the row of U with
 * the ground column. On a network of conductances every term has the same sign, so 1e-12 S beside 1e7 S is not lost.
 * Source: W. K. Grassmann, M. I. Taksar, D. P. Heyman, Operations Research 33 (1985) 1107.
 */
export function refactor(factor: NumericFactor, values: Float64Array): number {
  const { symbolic: s, lu, inversePivot } = factor;
  const { place, lowerStart, lowerColumn, pivotPlace, nodeEnd, groundPlace, derived, target, size } = s;
  lu.fill(0);
  for (let entry = 1; entry < place.length; entry++) lu[place[entry]] += values[entry];
  let t = 0;
  let c = 0;
  for (let row = 0; row < size; row++) {
    const pivotAt = pivotPlace[row];
    for (let at = lowerStart[row]; at < pivotAt; at++) {
      const k = lowerColumn[c++];
      const multiplier = lu[at] * inversePivot[k];
      lu[at] = multiplier;
      const end = groundPlace[k];
      for (let u = pivotPlace[k] + 1; u <= end; u++) lu[target[t++]] -= multiplier * lu[u];
    }
    if (derived[row] === 1) {
      let sum = lu[groundPlace[row]];
      const end = nodeEnd[row];
      for (let u = pivotAt + 1; u < end; u++) sum += lu[u];
      lu[pivotAt] = -sum;
    }
    const inverse = 1 / lu[pivotAt];
    if (inverse === 0 || !Number.isFinite(inverse)) return s.order.rows[row];
    inversePivot[row] = inverse;
  }
  return -1;
}

/** Solves A·solution = rightSide. `rightSide` is by row, `solution` by unknown; both may be longer than the system. */
export function solveFactored(factor: NumericFactor, rightSide: Float64Array, solution: Float64Array): void {
  const { symbolic: s, lu, inversePivot, work } = factor;
  const { lowerStart, lowerColumn, pivotPlace, groundPlace, columnAt, order, size } = s;
  let c = 0;
  for (let row = 0; row < size; row++) {
    let sum = rightSide[order.rows[row]];
    const end = pivotPlace[row];
    for (let at = lowerStart[row]; at < end; at++) sum -= lu[at] * work[lowerColumn[c++]];
    work[row] = sum;
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = work[row];
    const end = groundPlace[row];
    for (let at = pivotPlace[row] + 1; at < end; at++) sum -= lu[at] * work[columnAt[at]];
    work[row] = sum * inversePivot[row];
    solution[order.columns[row]] = work[row];
  }
}
