import type { DeviceLaw } from "../devices/law";

export interface ArmatureParameters {
  /** +1 on its way to the coil, less than 0 on its way back, 0 at rest. */
  readonly rate: number;
  /** Where it stands when it has had all the time it needs, s. */
  readonly settled: number;
}

/**
 * How far the armature of a relay has come, in seconds of its way to the coil: ds/dt = rate. No current flows; the two
 * terminals only tie it to the circuit.
 */
export const armatureLaw: DeviceLaw<ArmatureParameters> = {
  terminals: 2,
  internals: [{ name: "secondsTravelled", tolerance: 1e-9 }],
  evaluate(p, x, out) {
    out.f[1] = out.isStatic ? x[1] - p.settled : -p.rate;
    if (out.isStatic) out.df[3] = 1;
    out.q[1] = x[1];
    out.dq[3] = 1;
  },
  initial: (p) => [p.settled],
};
