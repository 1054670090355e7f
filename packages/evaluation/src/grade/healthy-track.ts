import {
  type Fault,
  type PreparedVehicle,
  prepareVehicle,
  type Settled,
  settle,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import type { AttemptEvent, Observation } from "../event";
import { type PlayedCar, playLine } from "./observe-again";

/** The car without faults after a line of the log. */
export interface HealthyLine {
  readonly car: PlayedCar;
  readonly observation: Observation | null;
  /** At rest after this line; null where it has no solution. */
  readonly settled: Settled | null;
}

/** Plays a car without faults through a log, as far as it is asked; null from the line on at which it has no solution. */
export type HealthyTrack = (index: number) => HealthyLine | null;

export function createHealthyTrack(document: VehicleDocument, events: readonly AttemptEvent[]): HealthyTrack {
  const prepared = prepareVehicle(document, []);
  const lines: (HealthyLine | null)[] = [];
  return (index) => {
    while (lines.length <= index) {
      const event = events[lines.length];
      const before = lines.at(-1);
      const ended = event === undefined || !prepared.ok || before === null;
      lines.push(ended ? null : healthyLine(prepared.value, before?.car ?? null, event));
    }
    return lines[index] ?? null;
  };
}

function healthyLine(
  vehicle: PreparedVehicle,
  before: PlayedCar | null,
  event: AttemptEvent,
): HealthyLine | null {
  const played = playLine(vehicle, before, event);
  if (played === null) return null;
  const settled = settle(vehicle, played.car.state);
  return { ...played, settled: settled.ok ? settled.value : null };
}

/**
 * Below this a fault on a conductor changes nothing: current through it, A, and volts on it, V. Both count for an open:
 * a module looks at its terminals without drawing current.
 */
const noAmps = 1e-6;
const noVolts = 1e-4;

/**
 * Does this fault make no difference while the healthy car stands like this, for want of current or volts where it lies?
 * A lead on the dead conductor may still tell.
 */
export function lieDormant(
  faults: readonly Fault[],
  document: VehicleDocument,
  { settled }: HealthyLine,
): boolean {
  return settled !== null && faults.every((fault) => isDormant(fault, document, settled));
}

function isDormant(fault: Fault, document: VehicleDocument, settled: Settled): boolean {
  switch (fault.kind) {
    case "open":
    case "seriesResistance": {
      const wires = document.conductors.filter(
        ({ id, from, to }) => id === fault.at || from === fault.at || to === fault.at,
      );
      const [wire] = wires;
      if (wire === undefined || wires.length !== 1 || Math.abs(settled.amps(wire.id)) >= noAmps) return false;
      return [wire.from, wire.to].every((end) => isDead(endPoint(end, document), settled));
    }
    case "shortToGround":
      return isDead(fault.at, settled);
    default:
      return false;
  }
}

const isDead = (point: string, settled: Settled): boolean => Math.abs(settled.volts(point)) < noVolts;

/** The point at a conductor's end: `X2.5` → `X2.5:h`, `X7.2/b` → `X7.2:b`, `XE1` → `XE1:ring`; others as they are. */
function endPoint(end: string, document: VehicleDocument): string {
  if (end.endsWith("/b")) return `${end.slice(0, -2)}:b`;
  if (end.includes(".")) return `${end}:h`;
  return document.groundPoints.some(({ id }) => id === end) ? `${end}:ring` : end;
}
