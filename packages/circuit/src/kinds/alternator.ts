import type { NodeName } from "../network";

/**
 * Alternator with rectifier and regulator. Terminals by DIN 72552: `plus` B+, `minus` 31 (the case), optionally `sense`
 * (where the regulator looks; without it at its own B+) and `lamp` D+ (charge lamp and exciter). It delivers electrical
 * power only while it is turned. An operating point gives the mean of the rectified pulses; a transient gives the
 * pulses themselves unless `pulses` is false. Equations: laws/alternator; output curve: physics/alternator-output.
 */
export interface Alternator {
  readonly kind: "alternator";
  readonly id: string;
  readonly plus: NodeName;
  readonly minus: NodeName;
  readonly sense?: NodeName;
  readonly lamp?: NodeName;
  /** Speed of its shaft, rad/s (about 2 to 3 times the engine's); 0 stands still. */
  readonly radiansPerSecond: number;
  /** Set-point at 20 °C regulator temperature, V, at half field; default 14.4. */
  readonly regulatedVolts?: number;
  /** Default −0.01 V/K. */
  readonly voltsPerKelvin?: number;
  /** Regulator temperature, °C; default 20. */
  readonly celsius?: number;
  /** How much higher than at full field the sensed volts are at no field; default 0.1 V. */
  readonly bandVolts?: number;
  /** Full-field output at 13.5 V and `ratedRadiansPerSecond`, A; default 120. */
  readonly ratedAmps?: number;
  /** Default 628.3 (6000/min). */
  readonly ratedRadiansPerSecond?: number;
  /** Speed at which 13.5 V appear without load, rad/s; default 115.2 (1100/min). */
  readonly cutInRadiansPerSecond?: number;
  /** Stator and diodes, Ω; default 0.02. */
  readonly ohms?: number;
  /** From the sense terminal to 31, Ω; default 10 kΩ. */
  readonly senseOhms?: number;
  /** An open sense wire: the regulator holds B+ at the set-point plus this, V; default 2.5. */
  readonly senseFallbackVolts?: number;
  /** Part of the full field that can still be driven; default 1; 0 for an open field winding or worn-out brushes. */
  readonly fieldScale?: number;
  /** Time constant of the field winding, s; default 0.1. */
  readonly fieldSeconds?: number;
  /** Field winding and regulator from D+ to 31, Ω; default 10. */
  readonly fieldOhms?: number;
  /** Backward leak of the rectifier from B+ to 31, Ω; default 1e8. */
  readonly leakOhms?: number;
  /** One of the six main diodes is open, or shorted; default false. */
  readonly diodeOpen?: boolean;
  readonly diodeShorted?: boolean;
  /** Default 6. */
  readonly polePairs?: number;
  /** Default true. */
  readonly pulses?: boolean;
}
