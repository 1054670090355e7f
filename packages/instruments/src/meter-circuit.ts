import type { Result, VehicleError } from "@probeworthy/vehicle";

/**
 * What the meter puts between its leads: a resistance, and a current it drives out of the red lead (0 for volts and
 * amps). A source behind a resistor is the same thing as a current source beside one (Norton's theorem).
 */
export interface MeterLoad {
  readonly ohms: number;
  readonly amps: number;
}

/** Solves the circuit under test with the load across the leads, or with the leads off it (`null`): red minus black, V. */
export type MeterCircuit = (load: MeterLoad | null) => Result<number, VehicleError>;
