import { fuseDerating } from "./fuse-derating";
import { createMonotoneCurve, curveSlope, curveValue, type MonotoneCurve } from "./monotone-curve";

/** Blade fuses after ISO 8820-3: F small, C medium, E large blade; bolted strips. */
export type FuseType = "C" | "E" | "F" | "bolted";

/** Every type holds this multiple of its rating for ever (for 100 h by the data sheets). */
const heldMultiple = 1.1;
/** How fast the opening time runs away as the current comes down to that multiple; an assumption. */
const lowSlope = -3;
/** Far above the rating no heat escapes while the link melts: I²t is constant (adiabatic). */
const highSlope = -1;

/**
 * Time–current points (multiple of the rating, seconds) inside the published opening windows.
 * Types C and F: 135 % 0.75–600 s, 160 % 0.25–50 s, 200 % 0.15–5 s, 350 % 0.08–0.5 s, 600 % 0.03–0.1 s.
 * Type E: 135 % 60–1800 s, 200 % 2–50 s, 350 % 0.2–7 s, 600 % 0.04–1 s.
 * Sources: Littelfuse 287, 297, 257 and 299 data sheets as transcribed in public project notes; DIN 72581-3 extract,
 * http://noiasca.rothschopf.net/deutsch/dkabel_sicherung.htm . The times at 600 % are chosen so that the melting
 * integral comes near the typical ones of the same sheets (1.0 to 2.1 A²s per A² of rating for blades, 5.3 for type E).
 * For bolted strips no window was found: the type E curve is assumed.
 */
const blade = pointsToCurve([
  [1.35, 60],
  [1.6, 6],
  [2, 1],
  [3.5, 0.17],
  [6, 0.04],
]);
const large = pointsToCurve([
  [1.35, 330],
  [2, 10],
  [3.5, 0.9],
  [6, 0.15],
]);
const curves: Readonly<Record<FuseType, MonotoneCurve>> = { C: blade, F: blade, E: large, bolted: large };

/**
 * ln t is a smooth falling curve over ln(m² − 1.1²), m the multiple of the rating: the heating beyond what the link can
 * hold. It meets every point, runs to infinity at 110 % and to I²t = constant far above.
 */
function pointsToCurve(points: readonly (readonly [multiple: number, seconds: number])[]): MonotoneCurve {
  return createMonotoneCurve(
    points.map(([multiple, seconds]) => [Math.log(surplus(multiple)), Math.log(seconds)]),
    [lowSlope, highSlope],
  );
}

function surplus(multiple: number): number {
  return multiple * multiple - heldMultiple * heldMultiple;
}

/** Above this multiple the melting rate goes on along its tangent: finite for any current. */
const mostMultiple = 1e6;

/**
 * 1/s at which a fuse link melts while it carries `multiple` times its (derated) rating: 1 / opening time, 0 up to
 * 110 %. Twice continuously differentiable.
 */
export function fuseMeltingRate(type: FuseType, multiple: number): number {
  const m = Math.abs(multiple);
  if (m > mostMultiple) {
    return fuseMeltingRate(type, mostMultiple) + fuseMeltingSlope(type, mostMultiple) * (m - mostMultiple);
  }
  const excess = surplus(m);
  return excess > 0 ? Math.exp(-curveValue(curves[type], Math.log(excess))) : 0;
}

/** Derivative of `fuseMeltingRate` by the multiple. */
export function fuseMeltingSlope(type: FuseType, multiple: number): number {
  const m = Math.min(mostMultiple, Math.abs(multiple));
  const excess = surplus(m);
  if (!(excess > 0)) return 0;
  const logarithm = Math.log(excess);
  const rate = Math.exp(-curveValue(curves[type], logarithm));
  return (Math.sign(multiple) * rate * -curveSlope(curves[type], logarithm) * 2 * m) / excess;
}

/**
 * Seconds until a cold fuse opens at a constant current; `Infinity` up to 110 % of its rating at that ambient
 * temperature. Falls steadily with the current. `ratedAmps` > 0; `ambientCelsius` 20 unless given (see fuseDerating).
 */
export function fuseOpeningSeconds(
  type: FuseType,
  ratedAmps: number,
  amps: number,
  ambientCelsius = 20,
): number {
  return 1 / fuseMeltingRate(type, amps / (ratedAmps * fuseDerating(type, ambientCelsius)));
}

/** Part-melted fuse links cool back with this time constant, s. Common practice, no source. */
export const fuseCoolingSeconds = 20;

/**
 * 1/s at which a part-melted link recovers: 1 / 20 s up to its rating, fading to nothing at 110 %, where melting sets
 * in. Continuously differentiable.
 */
export function fuseRecoveryRate(multiple: number): number {
  const s = recoveryShare(multiple);
  return (s * s * (3 - 2 * s)) / fuseCoolingSeconds;
}

/** Derivative of `fuseRecoveryRate` by the multiple. */
export function fuseRecoverySlope(multiple: number): number {
  const s = recoveryShare(multiple);
  return (-Math.sign(multiple) * 6 * s * (1 - s)) / (heldMultiple - 1) / fuseCoolingSeconds;
}

const recoveryShare = (multiple: number): number =>
  Math.min(1, Math.max(0, (heldMultiple - Math.abs(multiple)) / (heldMultiple - 1)));
