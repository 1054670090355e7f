import type { NodeName } from "../network";

/** State of charge from 0 to 1 and open-circuit volts of a rested 12 V battery. */
export type OpenVoltsTable = readonly (readonly [charge: number, volts: number])[];

/**
 * Lead-acid starter battery: open-circuit volts by charge and temperature, resistance by charge and temperature, charge
 * acceptance, and a dip under cranking that deepens over some seconds. Equations: laws/battery; curves and their sources:
 * physics/battery-charge. An operating point holds the state of charge and has the polarisation settled.
 */
export interface Battery {
  readonly kind: "battery";
  readonly id: string;
  readonly positive: NodeName;
  readonly negative: NodeName;
  readonly capacityAmpereHours: number;
  /** 0 flat to 1 full; default 1. A transient moves it, below 0 when the battery is drained past empty. */
  readonly stateOfCharge?: number;
  /** Electrolyte, °C; default 25. */
  readonly celsius?: number;
  /** What answers at once, Ω, full at 25 °C; default 0.2 Ω / capacity in Ah (3.3 mΩ at 60 Ah; from memory 4 to 6 mΩ in all). */
  readonly ohms?: number;
  /** What follows with `polarisationSeconds`, Ω, full at 25 °C; default 0.1 Ω / capacity in Ah. */
  readonly polarisationOhms?: number;
  /** Default 5 s. */
  readonly polarisationSeconds?: number;
  /** Multiple of both resistances and of the acceptance resistance: worn plates; default 1. */
  readonly resistanceScale?: number;
  /** Cells that still work, of the six the curve is for; default 6. A shorted cell leaves 5; 12 make a 24 V battery. */
  readonly cells?: number;
  /** Added to the open-circuit volts, V at 6 cells: glass-mat types 0.1 to 0.2 (from memory); default 0. */
  readonly voltsAbove?: number;
  /** Open-circuit volts by charge, from 0 to 1; default the flooded battery of physics/battery-charge. */
  readonly openVolts?: OpenVoltsTable;
  /** Temperature at which `openVolts` holds, °C; default 25. */
  readonly openVoltsCelsius?: number;
}
