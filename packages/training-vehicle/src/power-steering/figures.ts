/**
 * Figures of the steering that the control law, the sensor and the symptoms share. All invented for this vehicle.
 */

/** N·m of torsion-bar torque per degree of twist. */
export const torsionBarStiffness = 1.25;
/** Twist at the mechanical stop, degrees. */
export const maximumTwist = 7.6;
/** Fraction of the sensor supply by which an output moves per degree of twist. */
export const spanPerDegree = 0.022;
/** The module's sensor supply, V. */
export const sensorSupplyVolts = 5;

/** Share of the assist that is left at a road speed: km/h → 0 to 1. */
export const speedCurve: readonly (readonly [number, number])[] = [
  [5, 1],
  [30, 0.76],
  [60, 0.55],
  [100, 0.38],
  [140, 0.3],
];

/** Road speed the module assumes while the brake module cannot be heard, km/h: safe at any speed, heavy when parking. */
export const assumedRoadSpeed = 90;

/** Share of the requested current that is allowed at a computed winding temperature: °C → 0 to 1. */
export const thermalCurve: readonly (readonly [number, number])[] = [
  [115, 1],
  [150, 0.4],
  [175, 0.15],
];
