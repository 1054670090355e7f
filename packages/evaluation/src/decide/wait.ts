import { ok } from "@probeworthy/vehicle";
import { standing } from "../context";
import { age } from "./aging";
import { type Bench, type Decision, noticeSymptoms } from "./outcome";

export function wait(bench: Bench, seconds: number): Decision {
  const car = age(bench, bench.car, seconds);
  if (!car.ok) return car;
  const items = noticeSymptoms(bench.context, car.value);
  if (!items.ok) return items;
  return ok({
    car: car.value,
    observation: { kind: "noticed", context: standing(car.value), items: [...items.value] },
  });
}
