import { err, type Result, settle, type VehicleError, type VehicleState } from "@probeworthy/vehicle";
import type { AttemptState, Noticed } from "../attempt-state";
import { type AttemptContext, learnersCar } from "../context";
import type { Observation, Refusal, World } from "../event";

/** What a command came to: how the car is left, what was seen, and what the review should know. */
export interface Outcome {
  readonly car: VehicleState;
  readonly observation: Observation;
  readonly meterFuse?: World["meterFuse"];
  readonly remarks?: World["remarks"];
}

export type Decision = Result<Outcome, Refusal>;

/** A command's handler: pure, and its refusals change nothing. `car` has not aged yet. */
export interface Bench {
  readonly context: AttemptContext;
  readonly state: AttemptState;
  readonly car: VehicleState;
}

export const refuse = (code: Refusal["code"], message: string, path?: string) =>
  err<Refusal>(path === undefined ? { code, message } : { code, message, path });

/** A refusal of the vehicle in the words of the bench. A broken document is our own bug: it was checked before. */
export function refuseVehicle(error: VehicleError) {
  switch (error.code) {
    case "invalid_condition":
      return refuse("invalid_condition", error.message, error.path);
    case "unknown_point":
      return refuse("unknown_point", error.message, error.path);
    case "unsolvable":
      return refuse("unsolvable", "The car cannot be worked out in this condition. Undo the last change.");
    default:
      throw new Error(`the vehicle refused a checked command: ${JSON.stringify(error)}`);
  }
}

/** What can be noticed without instruments; whether it is normal is for the learner to know. */
export function noticeSymptoms(context: AttemptContext, car: VehicleState): Result<Noticed, Refusal> {
  const settled = settle(learnersCar(context), car);
  if (!settled.ok) return refuseVehicle(settled.error);
  return {
    ok: true,
    value: settled.value.symptoms.map(({ id, title, text }) => ({ id, title, text })),
  };
}
