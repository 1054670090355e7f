import type { NodeName } from "../network";
import type { SteinhartHart, ThermistorPoint } from "../physics/steinhart-hart";

/**
 * A resistor that follows a temperature from outside; it does not heat itself. Exactly one of three laws:
 *
 *   steinhartHart  NTC by its coefficients, 1/T = a + b·ln R + c·(ln R)³ in kelvin and ohms, b > 0
 *   table          NTC or PTC by [°C, Ω], two points or more in any order; see physics/thermistor-table for what lies
 *                  between the points and beyond them
 *   platinumOhms   platinum sensor (IEC 60751) of so many ohms at 0 °C
 *
 * `set` changes `celsius` and `platinumOhms`; other tables and coefficients need a circuit prepared anew. Quantities: ohms.
 */
export interface Thermistor {
  readonly kind: "thermistor";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly celsius: number;
  readonly steinhartHart?: SteinhartHart;
  readonly table?: readonly ThermistorPoint[];
  readonly platinumOhms?: number;
}
