import "server-only";
import type { Sheet } from "@probeworthy/diagram";
import { replay } from "@probeworthy/evaluation/server";
import {
  type ConditionValues,
  type Fault,
  type PreparedVehicle,
  prepareVehicle,
  startState,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import { type PotentialsResult, potentialsOf } from "../views/potentials";
import { mayReveal } from "../views/reveal";
import type { AttemptRecord } from "./attempts/attempt-record";
import { BoundedCache } from "./attempts/bounded-cache";
import type { Papers } from "./papers";

// Preparing costs far more than settling, and a slider asks again and again for the same car.
const cars = new BoundedCache<PreparedVehicle>(12);

type Prepared =
  | { readonly ok: true; readonly value: PreparedVehicle }
  | Extract<PotentialsResult, { ok: false }>;

function carWith(versionId: string, document: VehicleDocument, faults: readonly Fault[]): Prepared {
  const key = `${versionId}/${JSON.stringify(faults)}`;
  const known = cars.get(key);
  if (known !== undefined) return { ok: true, value: known };
  const made = prepareVehicle(document, [...faults]);
  if (!made.ok) {
    const { error } = made;
    const message =
      error.code === "invalid_document" ? (error.messages[0]?.message ?? error.code) : error.message;
    return { ok: false, message };
  }
  cars.set(key, made.value);
  return made;
}

/** A car of this make under these conditions, a moment after it was set up, with these faults in it. */
export function livePotentials(
  { versionId, document }: Papers,
  sheet: Sheet,
  conditions: ConditionValues,
  faults: readonly Fault[],
): PotentialsResult {
  const car = carWith(versionId, document, faults);
  if (!car.ok) return car;
  const state = startState(car.value, conditions);
  if (!state.ok)
    return { ok: false, message: "message" in state.error ? state.error.message : state.error.code };
  return potentialsOf(car.value, state.value, sheet);
}

/** Whether the car behind an attempt may be looked into: once its report is in, by whoever may then see the fault. */
export function mayLookInto(record: AttemptRecord, isStaff: boolean, now: Date): boolean {
  if (isStaff) return true;
  return record.state.status === "submitted" && mayReveal(record.attempt.assignment, now);
}

/** The learner's car as it stood after a line of the log. */
export function attemptPotentials(
  { versionId, document }: Papers,
  record: AttemptRecord,
  sheet: Sheet,
  line: number,
): PotentialsResult {
  const car = carWith(versionId, document, record.context.variant.faults);
  if (!car.ok) return car;
  const events = record.events.slice(0, line);
  if (events.length < line) return { ok: false, message: `The log has no line ${line}.` };
  const { conditions, unplugged, pulledFuses, world } = replay(events);
  return potentialsOf(car.value, { conditions, unplugged, pulledFuses, slow: world.slow }, sheet);
}
