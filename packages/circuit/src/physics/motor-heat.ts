/** Two-node heat of a motor: thermal resistances in K/W, capacities in J/K. */
export interface TwoNodeHeat {
  readonly windingToHousing: number;
  readonly housingToAmbient: number;
  readonly windingCapacity: number;
  readonly housingCapacity: number;
}

/** °C. */
export interface MotorTemperatures {
  readonly winding: number;
  readonly housing: number;
}

/**
 * Two-node heat of a motor with constant loss P in the winding:
 *   Cw·w' = P − (w − h)/Rwh        Ch·h' = (w − h)/Rwh − (h − a)/Rha
 * Advanced exactly: the 2×2 system is split into its two real modes, each an exponential. Temperatures in °C, R in
 * K/W, C in J/K, P in W. Steady state: h = a + P·Rha, w = h + P·Rwh.
 */
export function advanceMotorHeat(
  heat: TwoNodeHeat,
  from: MotorTemperatures,
  watts: number,
  ambient: number,
  seconds: number,
): MotorTemperatures {
  const { windingToHousing: rwh, housingToAmbient: rha, windingCapacity: cw, housingCapacity: ch } = heat;
  const steadyHousing = ambient + watts * rha;
  const steadyWinding = steadyHousing + watts * rwh;
  // x' = A·x for the distance x from the steady state; A = [[−p, p], [q, −(q + s)]].
  const p = 1 / (rwh * cw);
  const q = 1 / (rwh * ch);
  const s = 1 / (rha * ch);
  const half = (p + q + s) / 2;
  const root = Math.sqrt(half * half - p * s); // (p+q+s)² > 4ps always holds, so the modes are real and distinct
  const fast = -half - root;
  const slow = (p * s) / fast; // the product of the modes is det A = p·s; avoids cancellation
  const w = from.winding - steadyWinding;
  const h = from.housing - steadyHousing;
  // Spectral form: e^{At} = (e^{slow·t}(A − fast) − e^{fast·t}(A − slow)) / (slow − fast).
  const windingRate = p * (h - w);
  const housingRate = q * w - (q + s) * h;
  const slowShare = Math.exp(slow * seconds) / (slow - fast);
  const fastShare = Math.exp(fast * seconds) / (slow - fast);
  return {
    winding: steadyWinding + slowShare * (windingRate - fast * w) - fastShare * (windingRate - slow * w),
    housing: steadyHousing + slowShare * (housingRate - fast * h) - fastShare * (housingRate - slow * h),
  };
}

/** Time constants of the two modes, fast then slow, s. */
export function motorHeatSeconds(heat: TwoNodeHeat): readonly [number, number] {
  const { windingToHousing: rwh, housingToAmbient: rha, windingCapacity: cw, housingCapacity: ch } = heat;
  const p = 1 / (rwh * cw);
  const s = 1 / (rha * ch);
  const half = (p + 1 / (rwh * ch) + s) / 2;
  const fast = half + Math.sqrt(half * half - p * s);
  return [1 / fast, fast / (p * s)];
}
