/**
 * A one-step method with one and the same implicit coefficient in every stage (ESDIRK). With dq/dt = g, stage i is
 *
 *   q_i = q_0 + h · Σ_{j ≤ i} weights[i][j] · g_j   at time t + nodes[i] · h
 *
 * and the last stage is the end of the step, so that its g starts the next one. One factorisation serves all stages.
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

const gamma = 2 - Math.SQRT2;
const d = gamma / 2;
const w = Math.SQRT2 / 4;

/**
 * TR-BDF2: a trapezoidal stage to γ = 2 − √2 of the step, then BDF2 through both. Second order, L-stable: what jumps is
 * forgotten within one step and does not ring. The error is the difference to the third-order rule with the same g.
 * Sources: R. E. Bank et al., IEEE Trans. Electron Devices 32 (1985) 1992; M. E. Hosea, L. F. Shampine, Applied
 * Numerical Mathematics 20 (1996) 21.
 */
export const trBdf2: Tableau = {
  stages: 3,
  diagonal: d,
  nodes: [0, gamma, 1],
  weights: [[0], [d, d], [w, w, d]],
  error: [w - (1 - w) / 3, w - (3 * w + 1) / 3, d - d / 3],
  errorOrder: 3,
};
