import type { CompiledVehicle } from "../compile/compile-vehicle";
import type { VehicleState } from "../simulation/types";

/**
 * Remembers what was worked out for a state of a vehicle, for as long as the state object lives. States are plain data
 * that nobody changes, so the same object has the same answer.
 */
export class ByState<Value> {
  private readonly known = new WeakMap<CompiledVehicle, WeakMap<VehicleState, Value>>();

  get(compiled: CompiledVehicle, state: VehicleState): Value | undefined {
    return this.known.get(compiled)?.get(state);
  }

  set(compiled: CompiledVehicle, state: VehicleState, value: Value): Value {
    const states = this.known.get(compiled) ?? new WeakMap<VehicleState, Value>();
    this.known.set(compiled, states.set(state, value));
    return value;
  }
}
