import { readMeter, readScanTool } from "@probeworthy/instruments";
import {
  advance,
  changeSeconds,
  changeState,
  type PreparedVehicle,
  settle,
  startState,
  type VehicleState,
} from "@probeworthy/vehicle";
import { codesObservation, liveDataObservation } from "../decide/use-scan-tool";
import type { AttemptEvent, Observation } from "../event";
import { secondsAfter, shopTime } from "../shop-time";

/** A candidate's car while the log is played to it, with shop time that has not been simulated yet. */
export interface PlayedCar {
  readonly vehicle: PreparedVehicle;
  readonly state: VehicleState;
  readonly pendingSeconds: number;
}

export interface Played {
  readonly car: PlayedCar;
  /** What this car would have shown; null when the line shows nothing of the car. */
  readonly observation: Observation | null;
}

/**
 * Does to a candidate's car what the log says was done, and says what it would have shown. Null when the candidate has
 * no solution in that condition: no such car stood in the shop.
 */
export function playLine(
  vehicle: PreparedVehicle,
  before: PlayedCar | null,
  event: AttemptEvent,
): Played | null {
  const { command, observation } = event;
  if (command.type === "open") {
    if (observation.kind !== "noticed") throw new Error("the hand-over shows what can be noticed");
    const started = startState(vehicle, observation.context.conditions);
    if (!started.ok) return null;
    return lookAt({ vehicle, state: started.value, pendingSeconds: 0 }, event);
  }
  if (before === null) throw new Error("a log begins with the hand-over");
  const time = shopTime[command.type];
  const waiting = command.type === "wait" ? command.seconds : time.before;
  const worked: PlayedCar = { ...before, pendingSeconds: before.pendingSeconds + waiting };
  const change = changeOf(event);
  if (change === null) return lookAt(worked, event);
  const caughtUp = catchUp(worked);
  if (caughtUp === null) return null;
  // The look that follows a change is one stretch of time with it: half the work of two.
  if ("conditions" in change) {
    const conditions = { ...caughtUp.state.conditions, ...change.conditions };
    const seconds = changeSeconds.conditions + secondsAfter(command.type);
    const seen = advance(vehicle, { ...caughtUp.state, conditions }, seconds);
    return seen.ok ? lookAt({ vehicle, state: seen.value, pendingSeconds: 0 }, event) : null;
  }
  const changed = changeState(vehicle, caughtUp.state, change);
  if (!changed.ok) return null;
  return lookAt({ vehicle, state: changed.value, pendingSeconds: secondsAfter(command.type) }, event);
}

function changeOf({ command, observation }: AttemptEvent): Parameters<typeof changeState>[2] | null {
  switch (command.type) {
    case "setConditions":
      // The logged condition, in which dependent values have already fallen back.
      return observation.kind === "noticed" ? { conditions: observation.context.conditions } : null;
    case "unplug":
      return { unplug: command.connector };
    case "plug":
      return { plug: command.connector };
    case "pullFuse":
      return { pullFuse: command.fuse };
    case "fitFuse":
      return { fitFuse: command.fuse, fresh: command.fresh };
    case "clearCodes":
      return { clearCodes: command.module };
    default:
      return null;
  }
}

function catchUp(car: PlayedCar): PlayedCar | null {
  if (car.pendingSeconds === 0) return car;
  const aged = advance(car.vehicle, car.state, car.pendingSeconds);
  return aged.ok ? { ...car, state: aged.value, pendingSeconds: 0 } : null;
}

/** What a car that stands like this shows where the log shows something; time not yet simulated passes first. */
export function lookAt(played: PlayedCar, { observation, world }: AttemptEvent): Played | null {
  if (observation.kind === "bench" || observation.kind === "submitted") {
    return { car: played, observation: null };
  }
  const car = catchUp(played);
  if (car === null) return null;
  const { vehicle, state } = car;
  switch (observation.kind) {
    case "noticed":
    case "fuse": {
      const settled = settle(vehicle, state);
      if (!settled.ok) return null;
      const items = settled.value.symptoms.map(({ id, title, text }) => ({ id, title, text }));
      if (observation.kind === "noticed") return { car, observation: { ...observation, items } };
      const element = state.slow.blownFuses.includes(observation.fuse) ? "melted" : "intact";
      return { car, observation: { ...observation, element, items } };
    }
    case "reading": {
      const { reading, red, black } = observation;
      // Nonsense readings and those of a dead input say nothing of the car.
      if (!tellsOfTheCar(observation, world.remarks)) return { car, observation: null };
      const question = { vehicle, state, function: reading.function, red, black, meterFuse: "good" } as const;
      const held = reading.function === "ohms" ? { heldRange: reading.range } : {};
      let answer = readMeter({ ...question, ...held });
      if (answer.ok && answer.value.reading.state === "overload" && reading.value !== null) {
        answer = readMeter(question); // near the end of the held range the figure decides
      }
      return answer.ok ? { car, observation: { ...observation, reading: answer.value.reading } } : null;
    }
    case "codes":
    case "liveData": {
      const answer = readScanTool(vehicle, state, observation.module);
      if (!answer.ok) return null;
      const show = observation.kind === "codes" ? codesObservation : liveDataObservation;
      return { car, observation: show(observation.module, answer.value, state) };
    }
  }
}

/** Is this a reading the evidence may rest on? */
export function tellsOfTheCar(
  { reading }: Extract<Observation, { kind: "reading" }>,
  remarks: AttemptEvent["world"]["remarks"],
): boolean {
  if (reading.state === "fuse_open" || reading.state === "lead_open") return false;
  return !remarks.includes("ohms_on_live_circuit") && !remarks.includes("meter_fuse_blown");
}
