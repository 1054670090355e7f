import { advance, type Result, type VehicleState } from "@probeworthy/vehicle";
import { learnersCar } from "../context";
import type { Refusal } from "../event";
import { type Bench, refuseVehicle } from "./outcome";

/** The car after some more seconds as it stands. */
export function age(bench: Bench, car: VehicleState, seconds: number): Result<VehicleState, Refusal> {
  if (seconds === 0) return { ok: true, value: car };
  const aged = advance(learnersCar(bench.context), car, seconds);
  return aged.ok ? aged : refuseVehicle(aged.error);
}
