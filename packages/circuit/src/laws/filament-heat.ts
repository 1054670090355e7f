import type { DeviceLaw } from "../devices/law";
import type { Filament } from "../network";

/** Tungsten: R ∝ T^1.2, T in kelvin (from memory). */
const resistanceExponent = 1.2;
/**
 * Seconds that the rated watts take to bring in the heat a 1 A filament holds at its rated point. From that, a 100 W
 * filament for 120 V is within a tenth of its final current after 0.05 s
 * (lamptech.co.uk/Documents/IN%20Starting.htm: near nominal within 0.05 s).
 */
const warmUpSecondsAtOneAmp = 0.06;
/** Beyond this exponent an exponential goes on along its tangent: finite for any unknown. */
const exponentCeiling = 150;

export interface FilamentHeatParameters {
  readonly coldSiemens: number;
  /** Volts at which the static curve bends. */
  readonly kneeVolts: number;
  /** 2/(1 − exponent of the static curve). */
  readonly bend: number;
  /** Heat held per kelvin times the cold temperature, J. */
  readonly coldJoules: number;
}

/**
 * Numbers of the law for a lamp. `warmUpSeconds` is the time in which the rated watts bring in the heat held at the
 * rated point. Default 0.06 s · (rated amps)^(2/3): a radiating round wire carries amps as its thickness to the power
 * of 1.5, and holds heat for a time in proportion to its thickness.
 */
export function filamentHeat(filament: Filament): FilamentHeatParameters {
  const { ratedVolts, ratedWatts, exponent = 0.55, coldRatio = 1 / 15 } = filament;
  const bend = 2 / (1 - exponent);
  const seconds = filament.warmUpSeconds ?? warmUpSecondsAtOneAmp * (ratedWatts / ratedVolts) ** (2 / 3);
  return {
    coldSiemens: ratedWatts / (coldRatio * ratedVolts ** 2),
    kneeVolts: ratedVolts / Math.sqrt(coldRatio ** -bend - 1),
    bend,
    coldJoules: (ratedWatts * seconds) / (coldRatio ** (-1 / resistanceExponent) - 1),
  };
}

/**
 * A filament with the heat it holds. Internal unknown y = ln(R/Rcold); with k = 2/(1 − exponent)
 *
 *   amps           = v · e^(−y) / Rcold
 *   heat held      = C · T,  T = Tcold · e^(y/1.2)                    (R ∝ T^1.2)
 *   watts given up = knee²/Rcold · (e^((k−1)·y) − e^(−y))
 *   watts taken up = v² · e^(−y) / Rcold
 *
 * In balance k·y = ln(1 + (v/knee)²), which is the static curve of devices/filament to the letter; without time that is
 * the equation, since it leads Newton's method straight to the answer whatever the network, where the watts of a cold
 * filament lead it astray. For the exponent 0.55 the watts given up go as T^4.1: nearly the T⁴ of radiation, though
 * nothing but re-rating data went in. How cold "cold" is does not matter: only C · Tcold enters.
 */
export const filamentWithHeat: DeviceLaw<FilamentHeatParameters> = {
  terminals: 2,
  internals: [{ name: "logResistanceRatio", tolerance: 1e-9 }],
  evaluate({ coldSiemens, kneeVolts, bend, coldJoules }, x, out) {
    const v = x[0]!;
    const y = x[1]!;
    const fall = growth(-y);
    const fallSlope = -growthSlope(-y);
    const scale = coldSiemens * kneeVolts * kneeVolts;
    out.f[0] = coldSiemens * fall * v;
    out.df[0] = coldSiemens * fall;
    out.df[1] = coldSiemens * fallSlope * v;
    if (out.isStatic) {
      const volts = v / kneeVolts;
      out.f[1] = bend * y - Math.log1p(volts * volts);
      out.df[2] = (-2 * volts) / (kneeVolts * (1 + volts * volts));
      out.df[3] = bend;
      return;
    }
    out.f[1] = scale * (growth((bend - 1) * y) - fall) - coldSiemens * fall * v * v;
    out.df[2] = -2 * coldSiemens * fall * v;
    out.df[3] =
      scale * ((bend - 1) * growthSlope((bend - 1) * y) - fallSlope) - coldSiemens * fallSlope * v * v;
    out.q[1] = coldJoules * growth(y / resistanceExponent);
    out.dq[3] = (coldJoules / resistanceExponent) * growthSlope(y / resistanceExponent);
  },
  initial: () => [0],
};

const growth = (z: number): number =>
  z < exponentCeiling ? Math.exp(z) : Math.exp(exponentCeiling) * (1 + z - exponentCeiling);
const growthSlope = (z: number): number => Math.exp(Math.min(z, exponentCeiling));
