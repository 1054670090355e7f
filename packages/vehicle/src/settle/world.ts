import type { CompiledVehicle } from "../compile/compile-vehicle";
import type { World } from "../compile/network-builder";
import type { ConditionDefinition } from "../document/condition";
import type { Readings } from "../simulation/evaluate";
import type { VehicleState } from "../simulation/types";

/** A value as the vehicle feels it: `onlyWhen` holds a number at its minimum in the wrong key position. */
export function effectiveCondition(
  definition: ConditionDefinition,
  state: VehicleState,
  definitions: ReadonlyMap<string, ConditionDefinition>,
): string | number {
  const value = state.conditions[definition.name] ?? definition.initial;
  if (definition.kind !== "number" || !definition.onlyWhen) return value;
  const { condition, is } = definition.onlyWhen;
  const other = definitions.get(condition);
  const now = state.conditions[condition] ?? other?.initial;
  return is.some((option) => option === now) ? value : definition.minimum;
}

/**
 * Conditions as numbers for expressions: a number as it is, a choice as the position of its option (0, 1, 2 …) in the
 * order of the document.
 */
export function conditionNumber(name: string, state: VehicleState, compiled: CompiledVehicle): number {
  const definition = compiled.index.conditions.get(name);
  if (!definition) return 0;
  const value = effectiveCondition(definition, state, compiled.index.conditions);
  if (typeof value === "number") return value;
  return definition.kind === "choice"
    ? Math.max(
        0,
        definition.options.findIndex((option) => option.value === value),
      )
    : definition.initial;
}

const nothing = (): number => 0;

/** Readings of an expression that sees the world only: sensors, thermistors, ambient. */
export const worldReadings = (condition: (name: string) => number): Readings => ({
  condition,
  volts: nothing,
  message: nothing,
  heard: nothing,
  amps: nothing,
  estimate: nothing,
  failed: nothing,
  own: nothing,
  signal: nothing,
  loadAmps: nothing,
  hertz: nothing,
  speedOf: nothing,
  torqueOf: nothing,
  pulledIn: nothing,
});

export const ambientCelsius = (state: VehicleState, compiled: CompiledVehicle): number =>
  compiled.ambientCondition === undefined ? 20 : conditionNumber(compiled.ambientCondition, state, compiled);

/** What one state says about element values. */
export function createWorld(state: VehicleState, compiled: CompiledVehicle): World {
  const { slow } = state;
  const ambient = ambientCelsius(state, compiled);
  return {
    ambient,
    choice: (name) => String(state.conditions[name] ?? compiled.index.conditions.get(name)?.initial ?? ""),
    readings: worldReadings((name) => conditionNumber(name, state, compiled)),
    winding: (motor) => slow.motors[motor]?.winding ?? ambient,
    charge: (battery) => slow.charge[battery] ?? 0,
    unplugged: new Set(state.unplugged),
    openFuses: new Set([...slow.blownFuses, ...state.pulledFuses]),
    pulled: new Set(state.pulledFuses),
  };
}

/** The key is off when the first choice condition called `key` stands at `off`. */
export const isKeyOff = (state: VehicleState, compiled: CompiledVehicle): boolean => {
  const key = compiled.index.conditions.get("key");
  return key?.kind === "choice" && (state.conditions.key ?? key.initial) === "off";
};
