import { method } from "./integrator";
import { inside, type Rows, start } from "./recorder";

/** One recorded step as a polynomial: value = Σ coefficients[n] · s^n for s from 0 to 1. */
export interface StepPolynomial {
  from: number;
  to: number;
  readonly coefficients: Float64Array;
  /** Values at the ends and at the stages. */
  least: number;
  most: number;
}

const order = method.stages;
/** Takes values at the stages to coefficients. */
const inverse = invertVandermonde(method.nodes);

/**
 * Calls `visit` with each step of a recording in turn, always the same object. The signal is the sum of columns times
 * their factors.
 */
export function eachStep(
  rows: Rows,
  columns: readonly (readonly [column: number, factor: number])[],
  visit: (step: StepPolynomial) => void,
): void {
  const { values, kinds, width, count } = rows;
  const at = (row: number): number =>
    columns.reduce((sum, [k, factor]) => sum + factor * values[row * width + k], 0);
  const step: StepPolynomial = { from: 0, to: 0, coefficients: new Float64Array(order), least: 0, most: 0 };
  const samples = new Float64Array(order);
  for (let row = 0; row + order - 1 < count; row++) {
    if (kinds[row] === inside || kinds[row + 1] === start) continue;
    for (let i = 0; i < order; i++) samples[i] = at(row + i);
    step.from = values[row * width];
    step.to = values[(row + order - 1) * width];
    step.least = Math.min(...samples);
    step.most = Math.max(...samples);
    for (let n = 0; n < order; n++) {
      let sum = 0;
      for (let i = 0; i < order; i++) sum += inverse[n * order + i] * samples[i];
      step.coefficients[n] = sum;
    }
    visit(step);
  }
}

export function valueAt({ coefficients }: StepPolynomial, s: number): number {
  let sum = 0;
  for (let n = coefficients.length - 1; n >= 0; n--) sum = sum * s + coefficients[n];
  return sum;
}

/** ∫ value ds and ∫ value² ds over the step. */
export function integrals({ coefficients: a }: StepPolynomial): {
  readonly first: number;
  readonly second: number;
} {
  let first = 0;
  let second = 0;
  for (let n = 0; n < a.length; n++) {
    first += a[n] / (n + 1);
    for (let m = 0; m < a.length; m++) second += (a[n] * a[m]) / (n + m + 1);
  }
  return { first, second };
}

/** Where inside (0, 1) the slope is zero. Third degree only. */
export function turningPoints({ coefficients: [, b, c, d] }: StepPolynomial): readonly number[] {
  const found = (s: number): boolean => s > 0 && s < 1;
  if (d === 0) return [-b / (2 * c)].filter(found);
  const root = c * c - 3 * b * d;
  if (root < 0) return [];
  // The stable form of both solutions of b + 2cs + 3ds² = 0.
  const q = -(c + (c >= 0 ? Math.sqrt(root) : -Math.sqrt(root)));
  return [q / (3 * d), b / q].filter(found).sort((u, v) => u - v);
}

/** Row n holds what each stage contributes to the coefficient of s^n. */
function invertVandermonde(nodes: readonly number[]): Float64Array {
  const n = nodes.length;
  const result = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    // Coefficients of Π_{j ≠ i} (s − c_j) / (c_i − c_j).
    let product = [1];
    for (let j = 0; j < n; j++) {
      if (j === i) continue;
      const scale = 1 / (nodes[i] - nodes[j]);
      const longer = new Array<number>(product.length + 1).fill(0);
      for (const [k, value] of product.entries()) {
        longer[k] -= value * nodes[j] * scale;
        longer[k + 1] += value * scale;
      }
      product = longer;
    }
    for (const [k, value] of product.entries()) result[k * n + i] = value;
  }
  return result;
}
