/** B+ volts at which the cut-in speed and the rated current are stated. */
export const ratingVolts = 13.5;

export interface AlternatorRating {
  /** A at ratedRadiansPerSecond and 13.5 V, full field. */
  readonly ratedAmps: number;
  readonly ratedRadiansPerSecond: number;
  /** Shaft speed at which 13.5 V appear with full field and no load. */
  readonly cutInRadiansPerSecond: number;
  /** Resistance of the stator and the diodes, Ω; less than (volts at rated speed − 13.5) / ratedAmps. */
  readonly ohms: number;
}

/** EMF of the rectified machine at full field, V: proportional to speed, 13.5 V at cut-in. */
export const alternatorVolts = (rating: AlternatorRating, radiansPerSecond: number): number =>
  (ratingVolts * Math.abs(radiansPerSecond)) / rating.cutInRadiansPerSecond;

/**
 * Ω behind that EMF: resistance and armature reaction in quadrature, the latter proportional to speed and such that the
 * rated point is met. At high speed EMF and reaction grow together, so that the current levels off: nearly
 * I∞·(1 − cut-in speed / speed), which for a cut-in at 1100/min and 6000/min rated gives half of the rated current at
 * an idling alternator's 1800/min, as makers' output curves do (common practice, no source).
 */
export function alternatorOhms(rating: AlternatorRating, radiansPerSecond: number): number {
  const spare = alternatorVolts(rating, rating.ratedRadiansPerSecond) - ratingVolts;
  const reactionRated = Math.sqrt(Math.max(0, (spare / rating.ratedAmps) ** 2 - rating.ohms ** 2));
  return Math.hypot(rating.ohms, (reactionRated * radiansPerSecond) / rating.ratedRadiansPerSecond);
}

/** Full-field output at `volts` on B+, A; 0 below cut-in. */
export const alternatorLimitAmps = (
  rating: AlternatorRating,
  radiansPerSecond: number,
  volts = ratingVolts,
): number =>
  Math.max(0, alternatorVolts(rating, radiansPerSecond) - volts) / alternatorOhms(rating, radiansPerSecond);

/**
 * Set-point at a regulator temperature: `volts` at 20 °C, less 0.1 V for every 10 °C above. Source: Westerbeke manual p. 83
 * (14.4 ± 0.3 V at 20 °C, −0.1 V per 10 °C).
 */
export const regulatedVoltsAt = (volts: number, celsius: number, voltsPerKelvin = -0.01): number =>
  volts + voltsPerKelvin * (celsius - 20);
