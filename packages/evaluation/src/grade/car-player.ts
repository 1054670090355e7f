import {
  type Fault,
  type PreparedVehicle,
  prepareVehicle,
  settle,
  type VehicleDocument,
  type VehicleState,
} from "@probeworthy/vehicle";
import type { AttemptEvent, Observation } from "../event";
import { type PlayedCar, playLine } from "./observe-again";

/**
 * What a candidate's car shows at a line of the log (index from 0): an observation, null where the line shows nothing
 * of the car, or `no_such_car` from the line on at which this car has no solution.
 */
export type CarPlayer = (index: number) => Observation | null | "no_such_car";

/** A car without faults as it was handed over, and what was noticed. */
export interface HandOver {
  readonly vehicle: PreparedVehicle;
  readonly state: VehicleState;
  readonly observation: Observation | null;
}

/** Below this a fault on a conductor changes nothing: current through it, A, and volts across a short, V. */
const noAmps = 1e-6;
const noVolts = 1e-4;

/** The hand-over of the healthy car; null where the log does not begin with one. */
export function handOverOf(document: VehicleDocument, events: readonly AttemptEvent[]): HandOver | null {
  const [first] = events;
  const prepared = prepareVehicle(document, []);
  if (first === undefined || !prepared.ok) return null;
  const played = playLine(prepared.value, null, first);
  return played === null
    ? null
    : { vehicle: prepared.value, state: played.car.state, observation: played.observation };
}

/**
 * Plays only as far as it is asked, and remembers: most candidates fall within a few lines. Where a car is handed over
 * with its fault on a dead conductor, it is handed over as the healthy one is.
 */
export function createCarPlayer(
  document: VehicleDocument,
  faults: readonly Fault[],
  events: readonly AttemptEvent[],
  healthy: HandOver | null = null,
): CarPlayer {
  const shown: (Observation | null | "no_such_car")[] = [];
  let prepared: ReturnType<typeof prepareVehicle> | null = null;
  let car: PlayedCar | null = null;
  return (index) => {
    while (shown.length <= index) {
      const event = events[shown.length];
      if (event === undefined) throw new Error(`the log has no line ${shown.length + 1}`);
      prepared ??= prepareVehicle(document, [...faults]);
      if (!prepared.ok || shown.at(-1) === "no_such_car") {
        shown.push("no_such_car");
        continue;
      }
      if (car === null && healthy !== null && faults.every((fault) => sleeps(fault, healthy))) {
        car = { vehicle: prepared.value, state: healthy.state, pendingSeconds: 0 };
        shown.push(healthy.observation);
        continue;
      }
      const played = playLine(prepared.value, car, event);
      car = played?.car ?? car;
      shown.push(played === null ? "no_such_car" : played.observation);
    }
    return shown[index] ?? null;
  };
}

/** Does this fault make no difference yet, for want of current or volts where it lies? */
function sleeps(fault: Fault, { vehicle, state }: HandOver): boolean {
  const settled = settle(vehicle, state);
  if (!settled.ok) return false;
  switch (fault.kind) {
    case "open":
    case "seriesResistance": {
      const wires = vehicle.document.conductors.filter(
        ({ id, from, to }) => id === fault.at || from === fault.at || to === fault.at,
      );
      return wires.length === 1 && wires.every(({ id }) => Math.abs(settled.value.amps(id)) < noAmps);
    }
    case "shortToGround":
      return Math.abs(settled.value.volts(fault.at)) < noVolts;
    default:
      return false;
  }
}
