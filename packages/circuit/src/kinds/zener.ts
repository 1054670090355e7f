import type { NodeName } from "../network";

/**
 * Voltage-regulator or suppressor diode by its data sheet: backwards it holds `breakdownVolts` at `testAmps` with
 * `dynamicOhms` there (slope of the volts about that point), forwards it drops `forwardVolts` at `forwardAmps`, at 25 °C:
 * both points exactly, the dynamic ohms to exp(−vb/vr) of themselves. Defaults: testAmps 5e-3, dynamicOhms 10,
 * forwardVolts 0.8, forwardAmps 1e-2, seriesOhms none, celsius 25, voltsPerKelvin 0 (of the breakdown; the forward drop
 * falls by 2 mV/K, common practice, no source).
 *
 *   amps = Is·(exp(v/vt) − 1) − Ib·(exp(−(v + vb)/vr) − exp(−vb/vr)),  v = volts − seriesOhms·amps,  vt = k·T/q
 *
 * vr = (dynamicOhms − seriesOhms)·testAmps, as the slope of that exponential at the test point asks. So the breakdown
 * grows softer towards small currents, as the higher dynamic resistance that data sheets give there says. What of it
 * does not is `seriesOhms`, which counts forwards too.
 */
export interface Zener {
  readonly kind: "zener";
  readonly id: string;
  readonly anode: NodeName;
  readonly cathode: NodeName;
  readonly breakdownVolts: number;
  readonly testAmps?: number;
  readonly dynamicOhms?: number;
  readonly forwardVolts?: number;
  readonly forwardAmps?: number;
  readonly seriesOhms?: number;
  readonly celsius?: number;
  readonly voltsPerKelvin?: number;
}
