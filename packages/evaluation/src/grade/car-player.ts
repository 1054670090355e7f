import { type Fault, prepareVehicle, type VehicleDocument } from "@probeworthy/vehicle";
import type { AttemptEvent, Observation } from "../event";
import { type HealthyTrack, lieDormant } from "./healthy-track";
import { lookAt, type PlayedCar, playLine } from "./observe-again";

/**
 * What a candidate's car shows at a line of the log (index from 0): an observation, null where the line shows nothing
 * of the car, or `no_such_car` from the line on at which this car has no solution.
 */
export type CarPlayer = (index: number) => Observation | null | "no_such_car";

/**
 * Plays only as far as it is asked, and remembers: most candidates fall within a few lines. As long as its faults lie on
 * dead conductors a car goes the way of the healthy one, and only what a lead sees is worked out.
 */
export function createCarPlayer(
  document: VehicleDocument,
  faults: readonly Fault[],
  events: readonly AttemptEvent[],
  healthy: HealthyTrack = () => null,
): CarPlayer {
  const shown: (Observation | null | "no_such_car")[] = [];
  let prepared: ReturnType<typeof prepareVehicle> | null = null;
  let car: PlayedCar | null = null;
  let follows = true;
  return (index) => {
    while (shown.length <= index) {
      const event = events[shown.length];
      if (event === undefined) throw new Error(`the log has no line ${shown.length + 1}`);
      prepared ??= prepareVehicle(document, [...faults]);
      if (!prepared.ok || shown.at(-1) === "no_such_car") {
        shown.push("no_such_car");
        continue;
      }
      const line = follows ? healthy(shown.length) : null;
      follows = line !== null && lieDormant(faults, document, line);
      if (follows && line !== null) car = { ...line.car, vehicle: prepared.value };
      const played =
        !follows || car === null || line === null
          ? playLine(prepared.value, car, event)
          : event.observation.kind === "reading"
            ? lookAt(car, event)
            : { car, observation: line.observation };
      car = played?.car ?? car;
      shown.push(played === null ? "no_such_car" : played.observation);
    }
    return shown[index] ?? null;
  };
}
