import { trainingVehicle } from "@probeworthy/training-vehicle";
import {
  advance,
  type ConditionValues,
  changeState,
  type Fault,
  type PreparedVehicle,
  prepareVehicle,
  type Result,
  type Settled,
  scan,
  settle,
  startState,
  type VehicleState,
} from "@probeworthy/vehicle";

/** The value of a result that a test takes for granted. */
export function must<T, E>(result: Result<T, E>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

export const keyOff: ConditionValues = { key: "off", engineSpeed: 0, steeringEffort: 0, roadSpeed: 0 };
export const keyOn: ConditionValues = { ...keyOff, key: "on" };
export const cranking: ConditionValues = { ...keyOff, key: "start" };
export const idling: ConditionValues = { ...keyOn, engineSpeed: 850 };
export const turning = (effort: number, roadSpeed = 0): ConditionValues => ({
  ...idling,
  steeringEffort: effort,
  roadSpeed,
});

/** The training vehicle with faults, driven by a test as a technician would: set the conditions, wait, read. */
export class TestDrive {
  readonly vehicle: PreparedVehicle;
  state: VehicleState;

  constructor(faults: readonly Fault[] = [], conditions: ConditionValues = keyOff) {
    this.vehicle = must(prepareVehicle(trainingVehicle, faults));
    this.state = must(startState(this.vehicle, conditions));
  }

  set(conditions: ConditionValues): this {
    this.state = must(changeState(this.vehicle, this.state, { conditions }));
    return this;
  }

  unplug(connector: string): this {
    this.state = must(changeState(this.vehicle, this.state, { unplug: connector }));
    return this;
  }

  fitNewFuse(fuse: string): this {
    this.state = must(changeState(this.vehicle, this.state, { pullFuse: fuse }));
    this.state = must(changeState(this.vehicle, this.state, { fitFuse: fuse, fresh: true }));
    return this;
  }

  wait(seconds: number): this {
    this.state = must(advance(this.vehicle, this.state, seconds));
    return this;
  }

  get now(): Settled {
    return must(settle(this.vehicle, this.state));
  }

  volts(point: string, against = "G1:-"): number {
    const { now } = this;
    return now.volts(point) - now.volts(against);
  }

  /** Current through the assist motor, positive to the right. */
  get motorAmps(): number {
    return this.now.amps("M1");
  }

  symptom(id: string): { readonly text: string; readonly normal: boolean } {
    const found = this.now.symptoms.find((symptom) => symptom.id === id);
    if (!found) throw new Error(`no symptom ${id}`);
    return found;
  }

  /** Codes a scan tool reads from a module; `undefined` when it does not answer. */
  codes(module: string): string[] | undefined {
    const answer = must(scan(this.vehicle, this.state, module));
    return answer.ok ? answer.codes.map(({ code }) => code) : undefined;
  }

  liveValue(module: string, name: string): number {
    const answer = must(scan(this.vehicle, this.state, module));
    const value = answer.ok ? answer.values.find((entry) => entry.name === name)?.value : undefined;
    if (value === undefined) throw new Error(`${module} gives no live value ${name}`);
    return value;
  }
}
