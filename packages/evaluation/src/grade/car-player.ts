import { type Fault, prepareVehicle, type VehicleDocument } from "@probeworthy/vehicle";
import type { AttemptEvent, Observation } from "../event";
import { type PlayedCar, playLine } from "./observe-again";

/**
 * What a candidate's car shows at a line of the log (index from 0): an observation, null where the line shows nothing
 * of the car, or `no_such_car` from the line on at which this car has no solution.
 */
export type CarPlayer = (index: number) => Observation | null | "no_such_car";

/** Plays only as far as it is asked, and remembers: most candidates fall within a few lines. */
export function createCarPlayer(
  document: VehicleDocument,
  faults: readonly Fault[],
  events: readonly AttemptEvent[],
): CarPlayer {
  const prepared = prepareVehicle(document, [...faults]);
  const shown: (Observation | null | "no_such_car")[] = [];
  let car: PlayedCar | null = null;
  return (index) => {
    while (shown.length <= index) {
      const event = events[shown.length];
      if (event === undefined) throw new Error(`the log has no line ${shown.length + 1}`);
      const played =
        prepared.ok && shown.at(-1) !== "no_such_car" ? playLine(prepared.value, car, event) : null;
      car = played?.car ?? car;
      shown.push(played === null ? "no_such_car" : played.observation);
    }
    return shown[index] ?? null;
  };
}
