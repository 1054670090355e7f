import type { NodeName } from "../network";

/**
 * Brushed direct-current motor with a constant field (permanent magnets): inrush, running, stall. A positive current into
 * `plus` turns it in the positive direction; reversed volts reverse it; turned from outside it generates. Equations and
 * sources: laws/motor. An operating point is the steady state, running or stalled; a transient starts from
 * `startAmps` and `startRadiansPerSecond`.
 */
export interface Motor {
  readonly kind: "motor";
  readonly id: string;
  readonly plus: NodeName;
  readonly minus: NodeName;
  /** Armature and brushes at 20 °C, Ω; follows the temperature law of copper. */
  readonly ohms: number;
  /** Armature inductance, H; default: 1 ms times `ohms`. */
  readonly henries?: number;
  /** Torque per ampere, N·m/A, and back-EMF per speed, V·s/rad: one number. */
  readonly motorConstant: number;
  /** Rotor and what turns with it, kg·m²; default 1e-4. */
  readonly inertia?: number;
  /** Friction proportional to speed, N·m·s/rad; default 0. */
  readonly viscousFriction?: number;
  /** Dry friction of brushes and bearings, N·m; default 0. Full from about 0.2 rad/s on. */
  readonly coulombFriction?: number;
  /** Load that opposes the motion whatever the speed (a seal, a gear), N·m; default 0. */
  readonly loadTorque?: number;
  /** Load proportional to speed, N·m·s/rad; default 0. */
  readonly loadPerSpeed?: number;
  /** Load growing with the square of the speed (a fan, a pump), N·m·s²/rad²; default 0. */
  readonly loadPerSpeedSquared?: number;
  /** Torque on the shaft from outside, N·m, in the positive direction (wind in a fan, a hanging weight); default 0. */
  readonly shaftTorque?: number;
  /** True for a seized rotor; default false. */
  readonly locked?: boolean;
  /** Drop of both brushes together at full current, V; default 0 (counted in `ohms`). */
  readonly brushVolts?: number;
  /** Winding temperature, °C; default 20. Where a heated motor starts from. */
  readonly celsius?: number;
  readonly startAmps?: number;
  readonly startRadiansPerSecond?: number;
  /**
   * Thermal resistances, K/W, and capacities, J/K, of winding and housing; all four or none. With them a transient
   * warms the winding, and an operating point does so when `heatInBalance` (default false: both temperatures are held).
   */
  readonly windingToHousing?: number;
  readonly housingToAmbient?: number;
  readonly windingCapacity?: number;
  readonly housingCapacity?: number;
  /** °C; default that of the winding. */
  readonly housingCelsius?: number;
  /** °C; default 20. */
  readonly ambientCelsius?: number;
  readonly heatInBalance?: boolean;
}
