import type { NodeName } from "../network";

/**
 * Output stage of a control module: a switch from `supply` (highSide), to `ground` (lowSide), or one each way (pushPull),
 * with a body diode across each switch that lets current back into the supply and out of the ground.
 *
 * `on` commands it: a pushPull output drives high when on and low when not. With `enabled` false nothing drives.
 *
 * On, a switch is `onOhms` (at 25 °C, rising with the absolute temperature to the power of `ohmsExponent`) and bends
 * smoothly over into `limitAmps` where given. Off, it leaks: `leakAmps` from a few volts on, less below. While nothing
 * drives, `pullUpAmps` come from the supply and `pullDownAmps` go to the ground, as stages have that look for an open
 * load. `clampVolts` is what a switch that is off holds against a coil (at 1 mA); `bodyVolts` its body diode's drop at 1 A.
 * `blockingVolts` puts a diode in line with each switch (that drop at `blockingAmps`), as bus transmitters have against
 * current from the line.
 *
 * With `tripSeconds` an overload that lasts so long in a transient turns the stage off until `on` or `enabled` has been
 * withdrawn, or until `retrySeconds` have passed; in an operating point it is off, unless it retries.
 *
 * Defaults: enabled true, celsius 25, ohmsExponent 1.5 (mobility by lattice scattering, from memory), leakAmps 1e-6,
 * bodyVolts 0.8, blockingAmps 0.01; none of the other optional things.
 */
export interface Driver {
  readonly kind: "driver";
  readonly id: string;
  readonly type: DriverType;
  readonly output: NodeName;
  /** Needed by highSide and pushPull, and for a pull-up. */
  readonly supply?: NodeName;
  /** Needed by lowSide and pushPull, and for a pull-down. */
  readonly ground?: NodeName;
  readonly on: boolean;
  readonly enabled?: boolean;
  readonly onOhms: number;
  readonly celsius?: number;
  readonly ohmsExponent?: number;
  readonly limitAmps?: number;
  readonly leakAmps?: number;
  readonly pullUpAmps?: number;
  readonly pullDownAmps?: number;
  readonly bodyVolts?: number;
  readonly clampVolts?: number;
  readonly blockingVolts?: number;
  readonly blockingAmps?: number;
  readonly tripSeconds?: number;
  readonly retrySeconds?: number;
}

export type DriverType = "highSide" | "lowSide" | "pushPull";
