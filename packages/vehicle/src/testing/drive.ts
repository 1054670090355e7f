import { prepareVehicle } from "../compile/compile-vehicle";
import type { ConditionValues } from "../document/condition";
import type { Fault } from "../document/fault";
import type { VehicleDocument } from "../document/vehicle-document";
import type { Result } from "../result";
import { advance } from "../simulation/advance";
import { scan } from "../simulation/scan";
import { settle } from "../simulation/settle";
import { changeState, startState, type VehicleChange } from "../simulation/state";
import type { PreparedVehicle, Settled, VehicleState } from "../simulation/types";
import { benchVehicle } from "./bench-vehicle";

/** The value of a result that a test takes for granted. */
export function must<T, E>(result: Result<T, E>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

export const keyOn: ConditionValues = { key: "on" };
export const idling: ConditionValues = { key: "on", engineSpeed: 800 };
export const released: ConditionValues = { ...idling, steeringEffort: 0 };
export const turning = (effort: number): ConditionValues => ({ ...idling, steeringEffort: effort });

/** A vehicle with faults under a technician's hands. */
export class Drive {
  readonly vehicle: PreparedVehicle;
  state: VehicleState;

  constructor(
    faults: readonly Fault[] = [],
    conditions: ConditionValues = {},
    document: VehicleDocument = benchVehicle,
  ) {
    this.vehicle = must(prepareVehicle(document, faults));
    this.state = must(startState(this.vehicle, conditions));
  }

  do(change: VehicleChange): this {
    this.state = must(changeState(this.vehicle, this.state, change));
    return this;
  }

  wait(seconds: number): this {
    this.state = must(advance(this.vehicle, this.state, seconds));
    return this;
  }

  /** Settles a copy of the state, so that no remembered answer to the same object is taken. */
  get now(): Settled {
    return must(settle(this.vehicle, structuredClone(this.state)));
  }

  volts(point: string, against = "G1:-"): number {
    const { now } = this;
    return now.volts(point) - now.volts(against);
  }

  amps(id: string): number {
    return this.now.amps(id);
  }

  signal(name: string, module = "A1"): number {
    return this.now.modules[module]?.signals[name] ?? 0;
  }

  codes(module = "A1"): string[] | undefined {
    const answer = must(scan(this.vehicle, this.state, module));
    return answer.ok ? answer.codes.map(({ code }) => code) : undefined;
  }
}
