import { boltzmannOverCharge, junctionLeak } from "../devices/diode";

/** Temperature at which data sheets rate a part, unless they say otherwise, °C. */
export const ratedCelsius = 25;

/** Beyond this many thermal volts the junction's exponential is cut off (devices/diode), and its rating with it. */
export const mostThermalVolts = 190;

/** k·T/q at a temperature, volts. */
export const thermalVolts = (celsius: number): number => boltzmannOverCharge * (celsius + 273.15);

/**
 * Saturation amps with which a junction passes `amps` at `volts`, its leak counted in: Shockley's law turned round.
 * Undefined where no saturation current does: at no volts, or at so many that the exponential is cut off.
 */
export function saturationOf(
  volts: number,
  amps: number,
  emission: number,
  celsius: number,
): number | undefined {
  const exponent = volts / (emission * thermalVolts(celsius));
  if (!(exponent > 0 && exponent <= mostThermalVolts)) return undefined;
  const saturation = (amps - junctionLeak * volts) / Math.expm1(exponent);
  return saturation > 0 ? saturation : undefined;
}
