import type { OperatingPoint } from "@probeworthy/circuit";
import type { ElementSetter } from "../compile/network-builder";

/**
 * An operating point that holds for a share of the time, or stands for several that do. Buses and pulses come and go
 * independently of each other, so that the mean of a quantity is its value at rest plus, for each of them, its share of
 * the time times what it adds; the share of the point at rest is what is left of 1.
 */
export interface TimeShare {
  readonly point: OperatingPoint;
  readonly share: number;
}

/** A state the network is in for a share of the time. */
export interface StateShare {
  readonly share: number;
  /** Puts the circuit into this state, or back into the one at rest; absent for the one at rest. */
  readonly put?: (there: boolean, set: ElementSetter) => void;
}

/** Time average of a quantity over the states of buses and pulses: what a slow meter sees. */
export const average = (shares: readonly TimeShare[], quantity: (point: OperatingPoint) => number): number =>
  shares.length === 1 && shares[0]
    ? quantity(shares[0].point)
    : shares.reduce((sum, { point, share }) => sum + share * quantity(point), 0);
