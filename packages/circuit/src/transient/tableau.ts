/**
 * A one-step method with one and the same implicit coefficient in every stage but the first, which is the end of the
 * step before (ESDIRK). With g = dq/dt, stage i is
 *
 *   q_i = q_0 + h · Σ_{j ≤ i} weights[i][j] · g_j   at time t + nodes[i] · h
 *
 * and the last stage is the end of the step. One factorisation serves all stages.
 */
export interface Tableau {
  readonly stages: number;
  readonly diagonal: number;
  readonly nodes: readonly number[];
  readonly weights: readonly (readonly number[])[];
  /** h · Σ error[j] · g_j estimates the error of q. */
  readonly error: readonly number[];
  /** Order of that estimate in h. */
  readonly errorOrder: number;
}

/** Root of 6γ³ − 18γ² + 9γ − 1 that makes the method L-stable. */
const gamma = 0.435866521508459;
const c2 = 2 * gamma;
const c3 = 3 / 5;
const a32 = (c3 * (c3 - c2)) / (4 * gamma);
const b2 = (-2 + 3 * c3 + 6 * gamma * (1 - c3)) / (12 * gamma * (c3 - c2));
const b3 = (1 - 6 * gamma + 6 * gamma * gamma) / (3 * c3 * (c3 - c2));

/**
 * Third order, L-stable: what jumps is forgotten within one step and does not ring. The second stage is a trapezoidal
 * one. Source: C. A. Kennedy, M. H. Carpenter, NASA/TM-2016-219173 (2016), ESDIRK3(2)4L[2]SA.
 *
 * The estimate is ours: of the weights that annul constants and lines, the smallest ones that answer 0.015·h³·q‴, which
 * was found to keep the error of a whole run near the tolerance of one step.
 */
export const esdirk3: Tableau = {
  stages: 4,
  diagonal: gamma,
  nodes: [0, c2, c3, 1],
  weights: [[0], [gamma, gamma], [c3 - a32 - gamma, a32, gamma], [1 - b2 - b3 - gamma, b2, b3, gamma]],
  error: smallestThirdDifference([0, c2, c3, 1], 0.015),
  errorOrder: 3,
};

/**
 * The d of least Σd² with Σd = 0, Σd·c = 0 and Σd·c²/2 = `size`: the part of c² that constants and lines leave over,
 * by Gram and Schmidt.
 */
function smallestThirdDifference(nodes: readonly number[], size: number): readonly number[] {
  const dot = (u: readonly number[], v: readonly number[]) => u.reduce((sum, x, i) => sum + x * v[i], 0);
  const without = (u: readonly number[], v: readonly number[]) => {
    const part = dot(u, v) / dot(v, v);
    return u.map((x, i) => x - part * v[i]);
  };
  const ones = nodes.map(() => 1);
  const line = without(nodes, ones);
  const squares = nodes.map((c) => c * c);
  const bend = without(without(squares, ones), line);
  const scale = (2 * size) / dot(bend, squares);
  return bend.map((x) => scale * x);
}
