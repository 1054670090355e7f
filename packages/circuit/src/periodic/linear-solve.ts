/**
 * Solves the dense system `matrix` · x = `rightSide` (row-major, overwritten) by elimination with row pivoting; the
 * solution takes the place of the right side. False when there is no pivot.
 */
export function solveDense(matrix: Float64Array, rightSide: Float64Array): boolean {
  const n = rightSide.length;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++)
      if (Math.abs(matrix[i * n + k]) > Math.abs(matrix[pivot * n + k])) pivot = i;
    const value = matrix[pivot * n + k];
    if (!(Math.abs(value) > 0)) return false;
    if (pivot !== k) swapRows(matrix, rightSide, n, pivot, k);
    for (let i = k + 1; i < n; i++) {
      const factor = matrix[i * n + k] / value;
      if (factor === 0) continue;
      for (let j = k; j < n; j++) matrix[i * n + j] -= factor * matrix[k * n + j];
      rightSide[i] -= factor * rightSide[k];
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = rightSide[i];
    for (let j = i + 1; j < n; j++) sum -= matrix[i * n + j] * rightSide[j];
    rightSide[i] = sum / matrix[i * n + i];
  }
  return rightSide.every(Number.isFinite);
}

function swapRows(matrix: Float64Array, rightSide: Float64Array, n: number, a: number, b: number): void {
  for (let j = 0; j < n; j++) {
    const held = matrix[a * n + j];
    matrix[a * n + j] = matrix[b * n + j];
    matrix[b * n + j] = held;
  }
  const held = rightSide[a];
  rightSide[a] = rightSide[b];
  rightSide[b] = held;
}
