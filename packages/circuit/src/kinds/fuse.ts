import type { NodeName } from "../network";
import type { FuseType } from "../physics/fuse-curve";

/**
 * A fuse. Its resistance rises from `coldOhms` with its own power such that it drops `ratedDropVolts` at its rating
 * (laws/fuse-link). In a transient its link melts by the time–current curve of its type and the fuse opens
 * (physics/fuse-curve); in an operating point nothing melts, and `isBlown`
 * alone says whether it is open. What a fuse of the wrong rating does follows from its rating. Transients know its state
 * (0 whole, 1 blown) and start with `isBlown`; a fuse that opens does so at once, without an arc.
 *
 * Quantities: isBlown (1 or 0).
 *
 * Defaults: `coldOhms` typical of type and rating; `ratedDropVolts` coldOhms · ratedAmps · the typical ratio of hot to
 * cold resistance (physics/fuse-resistance); ambientCelsius 20; isBlown false; melted (share of the link already gone)
 * 0; openOhms 1e12. A given drop must lie between 1 and 2.5 times coldOhms · ratedAmps.
 */
export interface Fuse {
  readonly kind: "fuse";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly type: FuseType;
  readonly ratedAmps: number;
  readonly coldOhms?: number;
  readonly ratedDropVolts?: number;
  readonly ambientCelsius?: number;
  readonly isBlown?: boolean;
  readonly melted?: number;
  readonly openOhms?: number;
}
