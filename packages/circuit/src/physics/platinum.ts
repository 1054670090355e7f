const lowest = -200;
const highest = 850;

/**
 * Ohms of a platinum sensor at `celsius`, with `ohmsAtZero` at 0 °C (100 for a Pt100, 200 for an exhaust gas sensor):
 *
 *   R(t) = R₀ · (1 + A t + B t² + C (t − 100) t³),  C only below 0 °C
 *
 * IEC 60751, which holds from −200 to 850 °C; outside that range the value of its end is kept.
 */
export function platinumOhms(celsius: number, ohmsAtZero = 100): number {
  const t = Math.min(highest, Math.max(lowest, celsius));
  const cold = t < 0 ? -4.183e-12 * (t - 100) * t ** 3 : 0;
  return ohmsAtZero * (1 + 3.9083e-3 * t - 5.775e-7 * t * t + cold);
}
