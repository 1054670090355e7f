import type { NodeName } from "../network";

/**
 * Electromagnetic relay with one make, break or change-over contact. Terminals by DIN 72552: coil `coilPlus` 86 and
 * `coilMinus` 85; contact `common` 30, `normallyOpen` 87, `normallyClosed` 87a, of which one may be missing.
 *
 * It pulls in by its coil's current, so that a hot coil of more ohms needs more volts; between drop-out and pull-in it
 * stays as it is. In a transient the current rises with the coil's L/R, and after it the armature may take time.
 */
export interface Relay {
  readonly kind: "relay";
  readonly id: string;
  readonly coilPlus: NodeName;
  readonly coilMinus: NodeName;
  readonly common: NodeName;
  readonly normallyOpen?: NodeName;
  readonly normallyClosed?: NodeName;
  /** Coil at 20 °C, Ω; default 85 (mini relay, 12 V). Follows the temperature law of copper. */
  readonly ohms?: number;
  /** Default 0.4 H. */
  readonly henries?: number;
  /**
   * Eddy currents in the core, as a resistance across the inductance, Ω: what limits the kick of a bare coil; default 50
   * times `ohms`, which makes it some 50 times the supply (common practice, no source). No part in an operating point.
   */
  readonly coreOhms?: number;
  /** Coil temperature, °C; default 20. */
  readonly celsius?: number;
  /** Volts across the coil at 20 °C that pull the armature in; default 6.8. */
  readonly pullInVolts?: number;
  /** Volts across the coil at 20 °C at which it lets go; default 2.4. */
  readonly dropOutVolts?: number;
  /**
   * Across the coil: nothing, a resistor, a diode (cathode at coilPlus), or a diode the wrong way round, which shorts
   * the feed; default "none". A relay with its diode, plugged in with 85 and 86 exchanged, is a reversedDiode too.
   */
  readonly suppressor?: "none" | "resistor" | "diode" | "reversedDiode";
  /** The resistor's Ω, default 680; or what lies in series with the diode, default 0.1. */
  readonly suppressorOhms?: number;
  /** Make contact 30–87, Ω: closed (default 5e-3; more for burnt points) and open (default 1e12; less for welded ones). */
  readonly makeClosedOhms?: number;
  readonly makeOpenOhms?: number;
  /** Break contact 30–87a, alike. */
  readonly breakClosedOhms?: number;
  readonly breakOpenOhms?: number;
  /** True for an armature that sticks in this place; default false. */
  readonly heldReleased?: boolean;
  readonly heldEnergised?: boolean;
  /** Flight of the armature after the current has reached its threshold, s; default 0. For transients. */
  readonly operateTravelSeconds?: number;
  readonly releaseTravelSeconds?: number;
  /** When the contact just reached opens, closes, … again, s after the first touch: rising, even in number; default none. */
  readonly bounceSeconds?: readonly number[];
}
