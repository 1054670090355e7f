import type { NodeName } from "../network";

/**
 * Light-emitting diode by its data sheet: it drops `ratedVolts` at `ratedAmps` and 25 °C, exactly, its series resistance
 * counted in. Defaults: seriesOhms none, emission 2, celsius 25, voltsPerKelvin −0.002 (forward volts at the rated
 * current against temperature; common practice, no source). With `breakdownVolts` it passes 1 mA backwards there.
 *
 *   amps = Is·(exp(v/vt) − 1),  v = volts − seriesOhms·amps,  vt = emission·k·T/q,  Is from the rated point
 */
export interface Led {
  readonly kind: "led";
  readonly id: string;
  readonly anode: NodeName;
  readonly cathode: NodeName;
  readonly ratedVolts: number;
  readonly ratedAmps: number;
  readonly seriesOhms?: number;
  readonly emission?: number;
  readonly celsius?: number;
  readonly voltsPerKelvin?: number;
  readonly breakdownVolts?: number;
}
