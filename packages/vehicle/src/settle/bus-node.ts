import type { OperatingPoint } from "@probeworthy/circuit";
import { type CanPlace, can, writeCanDrive } from "../compile/module/can-node";
import { type LinPlace, writeLinDrive } from "../compile/module/lin-node";
import type { ElementSetter } from "../compile/network-builder";
import type { ModuleRun } from "./module-run";

/** A node of one of the vehicle's buses. */
export interface BusNode {
  readonly medium: "can" | "lin";
  /** Without one it is the scan tool. */
  readonly run: ModuleRun | undefined;
  /** Others understand it only when they hear its headers too: the master of a LIN. */
  readonly master: boolean;
  /** Share of time it holds the bus dominant. */
  readonly dominantShare: number;
  drive(dominant: boolean, set: ElementSetter): void;
  /** What it lays between its wires and its ground while dominant; none where the wires answer along a curve. */
  readonly drivers: readonly BusDriver[];
  /** Whether its receiver tells somebody's dominant state from the recessive one. */
  hears(recessive: Levels, dominant: Levels): boolean;
}

/** A source of so many volts behind so many ohms, from ground to wire. */
export interface BusDriver {
  readonly wire: string;
  readonly ground: string;
  readonly volts: number;
  readonly ohms: number;
}

/** As much of an operating point as a receiver sees. */
export type Levels = Pick<OperatingPoint, "volts">;

/**
 * Receiver limits of ISO 11898-2 (source: https://elearning.vector.com/mod/page/view.php?id=341): recessive below
 * 0.5 V, dominant above 0.9 V between the wires, both wires' mean within −12 … +12 V of the receiver's own ground.
 */
const recessiveBelow = 0.5;
const dominantAbove = 0.9;
const commonModeLimit = 12;

export function canNode(place: CanPlace, dominantShare: number, run: ModuleRun | undefined): BusNode {
  const { id, high, low, ground } = place;
  const difference = (point: Levels): number => point.volts(high) - point.volts(low);
  const commonMode = (point: Levels): number =>
    Math.abs((point.volts(high) + point.volts(low)) / 2 - point.volts(ground));
  return {
    medium: "can",
    run,
    master: false,
    dominantShare,
    drive: (dominant, set) => writeCanDrive(id, dominant, set),
    drivers: [
      { wire: high, ground, volts: can.driveHighVolts, ohms: can.driveOhms },
      { wire: low, ground, volts: can.driveLowVolts, ohms: can.driveOhms },
    ],
    hears: (recessive, dominant) =>
      difference(recessive) < recessiveBelow &&
      difference(dominant) > dominantAbove &&
      commonMode(recessive) <= commonModeLimit &&
      commonMode(dominant) <= commonModeLimit,
  };
}

/** Receiver limits of ISO 17987-4, as parts of the receiver's own supply (from memory). */
const linDominantBelow = 0.4;
const linRecessiveAbove = 0.6;

export function linNode(place: LinPlace, dominantShare: number, run: ModuleRun): BusNode {
  const { id, wire, supply, ground, master } = place;
  const level = (point: Levels): number =>
    (point.volts(wire) - point.volts(ground)) / Math.max(1e-3, point.volts(supply) - point.volts(ground));
  return {
    medium: "lin",
    run,
    master,
    dominantShare,
    drive: (dominant, set) => writeLinDrive(id, dominant, set),
    // At rest the pull-up's diode hardly conducts: nothing can be said from there about where it will.
    drivers: [],
    hears: (recessive, dominant) =>
      level(recessive) > linRecessiveAbove && level(dominant) < linDominantBelow,
  };
}
