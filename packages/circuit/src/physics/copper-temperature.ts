/** Temperature coefficient of annealed copper at 20 °C, 1/K (IEC 60028, from memory). */
export const copperCoefficient = 0.00393;

/** No temperature takes a resistor below this part of its reference value. */
const leastPart = 0.1;

/**
 * Ohms at `celsius` of a conductor that has `ohms` at `referenceCelsius`, with `coefficient` in 1/K at that reference:
 *
 *   R(t) = R₀ · [1 + α (t − t₀)]
 *
 * Held at a tenth of R₀, so that no temperature makes it vanish. Never fails for finite arguments and `ohms` > 0.
 */
export const ohmsAt = (ohms: number, celsius: number, coefficient: number, referenceCelsius = 20): number =>
  ohms * Math.max(leastPart, 1 + coefficient * (celsius - referenceCelsius));

/**
 * Ohms of a resistor element with its optional temperature fields: `ohms` as it stands when either `celsius` or
 * `temperatureCoefficient` is absent, otherwise `ohmsAt` with `referenceCelsius` (20 °C unless given).
 */
export const resistorOhms = (resistor: {
  readonly ohms: number;
  readonly celsius?: number;
  readonly temperatureCoefficient?: number;
  readonly referenceCelsius?: number;
}): number =>
  resistor.celsius === undefined || resistor.temperatureCoefficient === undefined
    ? resistor.ohms
    : ohmsAt(resistor.ohms, resistor.celsius, resistor.temperatureCoefficient, resistor.referenceCelsius);
