import type { OperatingPoint } from "@probeworthy/circuit";

/** Where a node of the bus touches the harness. */
export interface BusPlace {
  readonly id: string;
  readonly high: string;
  readonly low: string;
  readonly ground: string;
}

/** One operating point that holds for a share of the time. */
export interface TimeShare {
  readonly point: OperatingPoint;
  readonly share: number;
  /** Who holds the bus dominant meanwhile; nobody while it rests. */
  readonly talker?: string;
}

/**
 * Receiver limits of ISO 11898-2 (source: https://elearning.vector.com/mod/page/view.php?id=341): recessive below
 * 0.5 V, dominant above 0.9 V between the wires, both wires' mean within −12 … +12 V of the receiver's own ground.
 */
const recessiveBelow = 0.5;
const dominantAbove = 0.9;
const commonModeLimit = 12;

const difference = (point: OperatingPoint, place: BusPlace): number =>
  point.volts(place.high) - point.volts(place.low);

const commonMode = (point: OperatingPoint, place: BusPlace): number =>
  (point.volts(place.high) + point.volts(place.low)) / 2 - point.volts(place.ground);

/** Whether a receiver tells the sender's dominant state from the recessive one. */
export function hears(receiver: BusPlace, recessive: OperatingPoint, dominant: OperatingPoint): boolean {
  return (
    difference(recessive, receiver) < recessiveBelow &&
    difference(dominant, receiver) > dominantAbove &&
    Math.abs(commonMode(recessive, receiver)) <= commonModeLimit &&
    Math.abs(commonMode(dominant, receiver)) <= commonModeLimit
  );
}

/** Time average of a quantity over the states of the bus: what a slow meter sees. */
export const average = (shares: readonly TimeShare[], quantity: (point: OperatingPoint) => number): number =>
  shares.length === 1 && shares[0]
    ? quantity(shares[0].point)
    : shares.reduce((sum, { point, share }) => sum + share * quantity(point), 0);
