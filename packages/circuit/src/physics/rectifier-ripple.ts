/** One of the six main diodes of a three-phase bridge may be open or shorted. */
export type RectifierState = "sound" | "openDiode" | "shortedDiode";

const third = (2 * Math.PI) / 3;
/** Mean of the sound bridge for phases of amplitude 1: 3·√3/π. */
const soundMean = (3 * Math.sqrt(3)) / Math.PI;

/**
 * Rectified volts of a three-phase bridge at a phase angle, as a multiple of the sound bridge's mean. Plus rail less
 * minus rail of ideal diodes on star-connected phases:
 *
 *   sound          max(a, b, c) − min(a, b, c)              six equal pulses a turn of the phasor
 *   open diode     max(b, c) − min(a, b, c)                 phase a cannot feed the plus rail: two pulses missing
 *   shorted diode  (a + max(a, b, c))/2 − min(a, b, c)      phase a ties the rail down while another is higher
 *
 * The first two follow from the circuit; in the third two equal reactances share the short (common practice, no source).
 */
export function rectifiedVolts(state: RectifierState, radians: number): number {
  const a = Math.sin(radians);
  const b = Math.sin(radians - third);
  const c = Math.sin(radians + third);
  const high = Math.max(a, b, c);
  const low = Math.min(a, b, c);
  if (state === "sound") return (high - low) / soundMean;
  const rail = state === "openDiode" ? Math.max(b, c) : (a + high) / 2;
  return (rail - low) / soundMean;
}

/** Mean over a turn: 1, 5/6 and 3/4 (the mean of max(b, c) is √3/π, that of max(a, b, c) is 3·√3/(2π), that of a is 0). */
export const rectifiedMean: Readonly<Record<RectifierState, number>> = {
  sound: 1,
  openDiode: 5 / 6,
  shortedDiode: 3 / 4,
};

/**
 * Peak to peak over a turn, as a multiple of the sound bridge's mean. Sound: between √3 and 3/2 amplitudes. Open: between
 * √3 and 0, where a alone is high. Shorted: rail and minus rail go from 3/2 amplitudes (a alone high) down to where a is
 * itself the lowest: (b − a)/2 with b highest, which is least, 3/4, where b and c are equal.
 */
export const rectifiedSwing: Readonly<Record<RectifierState, number>> = {
  sound: (Math.sqrt(3) - 1.5) / soundMean,
  openDiode: Math.sqrt(3) / soundMean,
  shortedDiode: (Math.sqrt(3) - 0.75) / soundMean,
};

/**
 * Peak-to-peak ripple at a terminal behind which the network has `networkOhms`, with the machine's own ripple
 * `swingVolts` behind `sourceOhms`: a divider, right while the machine delivers current all the time, too high where the
 * EMF falls below the volts at the terminal meanwhile (a bad diode).
 */
export const rippleVolts = (swingVolts: number, sourceOhms: number, networkOhms: number): number =>
  (swingVolts * networkOhms) / (networkOhms + sourceOhms);
