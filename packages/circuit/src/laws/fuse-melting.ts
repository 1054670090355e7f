import type { DeviceLaw } from "../devices/law";
import {
  type FuseType,
  fuseMeltingRate,
  fuseMeltingSlope,
  fuseRecoveryRate,
  fuseRecoverySlope,
} from "../physics/fuse-curve";
import { type FuseLinkParameters, linkAmps, linkSiemens } from "./fuse-link";

export interface FuseMeltingParameters extends FuseLinkParameters {
  readonly type: FuseType;
  /** Rating at the ambient temperature. */
  readonly deratedAmps: number;
  /** Melted share at the start, 0 to 1. */
  readonly melted: number;
}

/**
 * A fuse link that melts. Internal unknown: the melted share m of a link, which opens at 1,
 *
 *   dm/dt = rate(I) − recovery(I) · m
 *
 * with rate = 1/opening time above 110 % of the rating and recovery up to there (see physics/fuse-curve), so at a
 * constant current it opens exactly at `fuseOpeningSeconds`, and shares of different currents add up (the cumulative
 * damage rule of Palmgren and Miner, an assumption). A blown link neither melts nor recovers. Static: m is held.
 */
export const fuseMelting: DeviceLaw<FuseMeltingParameters> = {
  terminals: 2,
  internals: [{ name: "melted", tolerance: 1e-9 }],
  evaluate(parameters, x, out) {
    const v = x[0]!;
    const melted = x[1]!;
    const siemens = linkSiemens(parameters, v);
    out.f[0] = linkAmps(parameters, v);
    out.df[0] = siemens;
    out.q[1] = melted;
    out.dq[3] = 1;
    if (out.isStatic) {
      out.f[1] = melted - parameters.melted;
      out.df[3] = 1;
      return;
    }
    if (parameters.isBlown) return;
    const multiple = linkAmps(parameters, v) / parameters.deratedAmps;
    const recovery = fuseRecoveryRate(multiple);
    out.f[1] = recovery * melted - fuseMeltingRate(parameters.type, multiple);
    out.df[2] =
      ((fuseRecoverySlope(multiple) * melted - fuseMeltingSlope(parameters.type, multiple)) * siemens) /
      parameters.deratedAmps;
    out.df[3] = recovery;
  },
  initial: (parameters) => [parameters.melted],
};
