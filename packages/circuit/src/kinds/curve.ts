import type { NodeName } from "../network";

/** Volts across from a to b, and the amps that then flow. */
export type CurvePoint = readonly [volts: number, amps: number];

/**
 * A device known by points of its current-voltage curve. Volts rise strictly, amps never fall; a smooth rising curve runs
 * through every point (monotone cubic, see physics/monotone-curve) and goes on straight beyond the first and the last.
 * A leak of 1e-12 S lies across. Unless `active`, [0, 0] must be among the points: then the device never delivers power.
 */
export interface Curve {
  readonly kind: "curve";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly points: readonly CurvePoint[];
  readonly active?: boolean;
}
