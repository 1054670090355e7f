import type { DeviceLaw } from "../devices/law";

export interface ArmatureParameters {
  /** +1 on its way to the coil, less than 0 on its way back, 0 at rest. */
  readonly rate: number;
  readonly start: number;
}

/**
 * How far the armature of a relay has come, in seconds of its way to the coil: ds/dt = rate. No current flows; the two
 * terminals only tie it to the circuit.
 */
export const armatureLaw: DeviceLaw<ArmatureParameters> = {
  terminals: 2,
  internals: [{ name: "secondsTravelled", tolerance: 1e-9 }],
  evaluate(p, x, out) {
    if (out.isStatic) {
      out.f[1] = x[1] - p.start;
      out.df[3] = 1;
      return;
    }
    out.f[1] = -p.rate;
    out.q[1] = x[1];
    out.dq[3] = 1;
  },
  initial: (p) => [p.start],
};
