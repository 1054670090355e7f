import { copperCoefficient } from "./copper-temperature";

/** Below this part of the resistance at 20 °C (−183 °C) the straight line is left. */
const lowest = 0.2;

/**
 * Resistance of a copper winding as a multiple of that at 20 °C: 1 + 0.00393·(celsius − 20), exact above −183 °C. Below,
 * the straight line goes over into an exponential that never reaches zero, so that a solver may pass through any
 * temperature on its way. Once differentiable.
 */
export function windingOhmsFactor(celsius: number): number {
  const line = 1 + copperCoefficient * (celsius - 20);
  return line >= lowest ? line : lowest * Math.exp((line - lowest) / lowest);
}

/** Slope of windingOhmsFactor, 1/K. */
export function windingOhmsFactorSlope(celsius: number): number {
  const line = 1 + copperCoefficient * (celsius - 20);
  return line >= lowest ? copperCoefficient : copperCoefficient * Math.exp((line - lowest) / lowest);
}
