import type { NodeName } from "../network";

/**
 * A switching PTC that heats itself: heater element or self-resetting protector of a motor. Its resistance is either
 * smooth (`coldOhms`, doubled at `switchCelsius`, rising by `coefficient` per kelvin above, level at
 * coldOhms / `hotShare`; see laws/switching-ptc-curve) or given by `table`, [°C, Ω] with °C rising, level beyond its ends.
 *
 * It gives up `wattsPerKelvin` to `ambientCelsius` and holds `joulesPerKelvin`. An operating point is the balance of heat
 * that it comes to from `startCelsius`; of several, the first on its way. A balance that hardly
 * exists (by less than a factor of two in resistance) may be passed. Where several such parts change each other's volts,
 * which trips first is a matter of time, which an operating point does not have: it warms them in equal steps; ask a
 * transient. Later solves go on from the last temperature, as the part would: what has tripped stays so while it is held;
 * `warmStart: false` starts anew. Where no balance is found: no_convergence.
 *
 * Defaults: coefficient 0.2 /K, hotShare 1e-4, joulesPerKelvin 20 s · wattsPerKelvin, ambientCelsius 20, startCelsius the
 * ambient's. Quantities: celsius.
 */
export interface SwitchingPtc {
  readonly kind: "switchingPtc";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly coldOhms?: number;
  readonly switchCelsius?: number;
  readonly coefficient?: number;
  readonly hotShare?: number;
  readonly table?: readonly (readonly [celsius: number, ohms: number])[];
  readonly wattsPerKelvin: number;
  readonly joulesPerKelvin?: number;
  readonly ambientCelsius?: number;
  readonly startCelsius?: number;
}
