/** A square matrix as rows. The fits have tens of parameters at most, so dense is enough. */
export type Matrix = number[][];

export function zeros(size: number): Matrix {
  return Array.from({ length: size }, () => new Array<number>(size).fill(0));
}

/** The inverse of a symmetric positive definite matrix by Cholesky's factors, or null when it is not one. */
export function invertPositiveDefinite(matrix: Matrix): Matrix | null {
  const size = matrix.length;
  const lower = zeros(size);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let rest = at(matrix, row, column);
      for (let k = 0; k < column; k += 1) rest -= at(lower, row, k) * at(lower, column, k);
      if (row !== column) put(lower, row, column, rest / at(lower, column, column));
      else if (rest > 1e-13 * Math.abs(at(matrix, row, row))) put(lower, row, row, Math.sqrt(rest));
      else return null;
    }
  }
  // L⁻¹ column by column, then (LLᵀ)⁻¹ = L⁻ᵀL⁻¹.
  const inverseLower = zeros(size);
  for (let column = 0; column < size; column += 1) {
    for (let row = column; row < size; row += 1) {
      let rest = row === column ? 1 : 0;
      for (let k = column; k < row; k += 1) rest -= at(lower, row, k) * at(inverseLower, k, column);
      put(inverseLower, row, column, rest / at(lower, row, row));
    }
  }
  const inverse = zeros(size);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let total = 0;
      for (let k = row; k < size; k += 1) total += at(inverseLower, k, row) * at(inverseLower, k, column);
      put(inverse, row, column, total);
      put(inverse, column, row, total);
    }
  }
  return inverse;
}

export function multiply(matrix: Matrix, vector: readonly number[]): number[] {
  return matrix.map((row) => row.reduce((total, entry, index) => total + entry * (vector[index] ?? 0), 0));
}

export function at(matrix: Matrix, row: number, column: number): number {
  return matrix[row]?.[column] ?? 0;
}

export function put(matrix: Matrix, row: number, column: number, value: number): void {
  const entries = matrix[row];
  if (entries === undefined) throw new RangeError(`The matrix has no row ${row}.`);
  entries[column] = value;
}

export function add(matrix: Matrix, row: number, column: number, value: number): void {
  put(matrix, row, column, at(matrix, row, column) + value);
}
