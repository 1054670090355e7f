import type { DeviceLaw } from "../devices/law";

/** Hot over cold ohms of a link just below melting: a zinc alloy at 419 °C with 0.0039 /K (from memory). */
export const mostHotRatio = 2.6;

export interface FuseLinkParameters {
  readonly coldOhms: number;
  /** Volts across the link at which half of the possible rise is reached; Infinity for a link of constant ohms. */
  readonly halfVolts: number;
  readonly isBlown: boolean;
  readonly openOhms: number;
}

/**
 * Volts for `FuseLinkParameters.halfVolts` such that a link of `coldOhms` has `hotRatio` times that at `ratedAmps`;
 * 1 ≤ hotRatio < 2.6.
 */
export function linkHalfVolts(coldOhms: number, ratedAmps: number, hotRatio: number): number {
  const share = (hotRatio - 1) / (mostHotRatio - 1);
  const ratedVolts = coldOhms * hotRatio * ratedAmps;
  return ratedVolts * Math.sqrt((1 - share) / share);
}

/** Part of the possible rise reached at v. */
const riseAt = (parameters: FuseLinkParameters, v: number): number => {
  const s = v / parameters.halfVolts;
  return 1 - 1 / (1 + s * s);
};

/**
 * Amps through a link. Its resistance rises with its own power, v², and levels off below melting:
 *
 *   R(v) = Rcold · (1 + 1.6 · w/(1 + w)),  w = (v/halfVolts)²
 *
 * a smooth, odd curve I = v/R(v) that rises everywhere (it would for any rise below 8 instead of 1.6).
 */
export function linkAmps(parameters: FuseLinkParameters, v: number): number {
  if (parameters.isBlown) return v / parameters.openOhms;
  return v / (parameters.coldOhms * (1 + (mostHotRatio - 1) * riseAt(parameters, v)));
}

/** Derivative of `linkAmps` by v. */
export function linkSiemens(parameters: FuseLinkParameters, v: number): number {
  if (parameters.isBlown) return 1 / parameters.openOhms;
  const most = mostHotRatio - 1;
  const share = riseAt(parameters, v);
  const ratio = 1 + most * share;
  return (1 + most * share - 2 * most * share * (1 - share)) / (parameters.coldOhms * ratio * ratio);
}

/** A fuse link as an operating point sees it: hot or cold, intact or blown, and no melting. */
export const fuseLink: DeviceLaw<FuseLinkParameters> = {
  terminals: 2,
  internals: [],
  evaluate(parameters, x, out) {
    const v = x[0]!;
    out.f[0] = linkAmps(parameters, v);
    out.df[0] = linkSiemens(parameters, v);
  },
  initial: () => [],
};
