import { ok, type Result, startState } from "@probeworthy/vehicle";
import { type AttemptState, replay } from "./attempt-state";
import { type AttemptContext, learnersCar, standing } from "./context";
import { noticeSymptoms, refuseVehicle } from "./decide/outcome";
import { fallBack } from "./decide/set-conditions";
import type { AttemptEvent, Refusal } from "./event";

/** Hands the car over: line 1 of the log, with what can be noticed as it stands. */
export function openAttempt(
  context: AttemptContext,
): Result<{ readonly state: AttemptState; readonly events: AttemptEvent[] }, Refusal> {
  const { scenario, document, variant } = context;
  const initial = Object.fromEntries(document.conditions.map(({ name, initial }) => [name, initial]));
  const conditions = fallBack(document.conditions, {
    ...initial,
    ...variant.conditions,
    ...scenario.startConditions,
  });
  const car = startState(learnersCar(context), conditions);
  if (!car.ok) return refuseVehicle(car.error);
  const items = noticeSymptoms(context, car.value);
  if (!items.ok) return items;
  const events: AttemptEvent[] = [
    {
      sequence: 1,
      command: { type: "open" },
      observation: { kind: "noticed", context: standing(car.value), items: [...items.value] },
      elapsedSeconds: 0,
      world: { slow: car.value.slow, meterFuse: "good", remarks: [] },
    },
  ];
  return ok({ state: replay(events), events });
}
