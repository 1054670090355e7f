import { type CompiledVehicle, requireCompiled } from "../compile/compile-vehicle";
import { clearedStatus } from "../diagnosis/status-byte";
import { conditionProblems } from "../document/check-references";
import type { ConditionValues } from "../document/condition";
import { isPluggable } from "../document/part-facts";
import type { VehicleIndex } from "../document/vehicle-index";
import { err, type Result } from "../result";
import { ambientCelsius } from "../settle/world";
import { advance } from "./advance";
import { mapRecord } from "./round";
import { scan } from "./scan";
import type { ModuleMemory, PreparedVehicle, SlowState, VehicleError, VehicleState } from "./types";

/**
 * Simulated seconds that belong to every change: long enough for a dead short to open its fuse and for the network to
 * come to rest. Shop time comes on top, through `advance`.
 */
export const changeSeconds = { start: 2, conditions: 2, plug: 0.5, fuse: 0.5, clear: 0.5 } as const;

export type VehicleChange =
  | { readonly conditions: ConditionValues }
  | { readonly unplug: string }
  | { readonly plug: string }
  | { readonly pullFuse: string }
  /** `fresh` fits a new fuse, otherwise the one that was pulled. */
  | { readonly fitFuse: string; readonly fresh: boolean }
  | { readonly clearCodes: string };

type StateResult = Result<VehicleState, VehicleError>;

/**
 * The vehicle as it is handed over: everything plugged, every condition at its initial value unless given, heat at
 * ambient, and the faults that act on the state applied (hot motor, weak battery, blown fuses); settled for
 * `changeSeconds.start`, so that a short has opened its fuse. Codes then mature with `advance`.
 * Errors: `invalid_condition`, `unsolvable`.
 */
export function startState(vehicle: PreparedVehicle, conditions: ConditionValues = {}): StateResult {
  const compiled = requireCompiled(vehicle);
  const problem = conditionError(conditions, compiled.index);
  if (problem) return err(problem);
  const initial = Object.fromEntries(
    compiled.document.conditions.map((condition) => [condition.name, condition.initial]),
  );
  const bare: VehicleState = {
    conditions: { ...initial, ...conditions },
    unplugged: [],
    pulledFuses: compiled.faults
      .flatMap((fault) => (fault.kind === "fuseMissing" ? [fault.component] : []))
      .sort(),
    slow: { seconds: 0, motors: {}, charge: {}, blownFuses: [], modules: {} },
  };
  const ambient = ambientCelsius(bare, compiled);
  return advance(vehicle, { ...bare, slow: startingSlowState(compiled, ambient) }, changeSeconds.start);
}

function startingSlowState(compiled: CompiledVehicle, ambient: number): SlowState {
  const hot = new Map<string, number>();
  const charge = new Map(compiled.batteries.map(({ id, stateOfCharge }) => [id, stateOfCharge]));
  const blown = new Set<string>();
  for (const fault of compiled.faults) {
    if (fault.kind === "motorHot") hot.set(fault.component, fault.celsius);
    if (fault.kind === "weakBattery") charge.set(fault.component, fault.stateOfCharge);
    if (fault.kind === "fuseBlown") blown.add(fault.component);
  }
  const modules = compiled.modules.map(({ id, component }): [string, ModuleMemory] => [
    id,
    {
      powered: false,
      estimates: Object.fromEntries(
        (component.thermalEstimates ?? []).map(({ name, motor }) => [
          name,
          (motor === undefined ? undefined : hot.get(motor)) ?? ambient,
        ]),
      ),
      failingFor: {},
      status: Object.fromEntries((component.monitors ?? []).map(({ code }) => [code, clearedStatus])),
      held: [],
    },
  ]);
  return {
    seconds: 0,
    motors: Object.fromEntries(
      compiled.motors.map(({ id }) => {
        const celsius = hot.get(id) ?? ambient;
        return [id, { winding: celsius, housing: celsius }];
      }),
    ),
    charge: Object.fromEntries(charge),
    blownFuses: [...blown].sort(),
    modules: Object.fromEntries(modules),
  };
}

/**
 * One thing the technician does, and the seconds that belong to it (`changeSeconds`). Doing what is already done changes
 * nothing but the time. Clearing codes needs a module that answers; when it does not, its memory stays as it was.
 * Errors: `invalid_condition` (unknown name or a value out of range), `unknown_id`, `unsolvable`.
 */
export function changeState(
  vehicle: PreparedVehicle,
  state: VehicleState,
  change: VehicleChange,
): StateResult {
  const { index } = requireCompiled(vehicle);
  if ("conditions" in change) {
    const problem = conditionError(change.conditions, index);
    if (problem) return err(problem);
    const conditions = { ...state.conditions, ...change.conditions };
    return advance(vehicle, { ...state, conditions }, changeSeconds.conditions);
  }
  if ("unplug" in change || "plug" in change) {
    const id = "unplug" in change ? change.unplug : change.plug;
    if (!index.connectors.has(id)) return err(unknownId(id, "connector"));
    const unplugged =
      "unplug" in change ? withId(state.unplugged, id) : state.unplugged.filter((entry) => entry !== id);
    return advance(vehicle, { ...state, unplugged }, changeSeconds.plug);
  }
  if ("pullFuse" in change || "fitFuse" in change) {
    const id = "pullFuse" in change ? change.pullFuse : change.fitFuse;
    const part = index.components.get(id);
    if (part?.kind !== "fuse" && !(part?.kind === "relay" && isPluggable(part)))
      return err(unknownId(id, "fuse or relay in a socket"));
    if ("pullFuse" in change)
      return advance(vehicle, { ...state, pulledFuses: withId(state.pulledFuses, id) }, changeSeconds.fuse);
    const pulledFuses = state.pulledFuses.filter((entry) => entry !== id);
    const slow = change.fresh ? withFreshFuse(state.slow, id) : state.slow;
    return advance(vehicle, { ...state, pulledFuses, slow }, changeSeconds.fuse);
  }
  return clearCodes(vehicle, state, change.clearCodes);
}

const withId = (ids: readonly string[], id: string): string[] => [...new Set([...ids, id])].sort();

function withFreshFuse(slow: SlowState, id: string): SlowState {
  const { fuseHeat, ...rest } = slow;
  const heat = Object.fromEntries(Object.entries(fuseHeat ?? {}).filter(([fuse]) => fuse !== id));
  return {
    ...rest,
    blownFuses: slow.blownFuses.filter((entry) => entry !== id),
    ...(Object.keys(heat).length > 0 ? { fuseHeat: heat } : {}),
  };
}

function clearCodes(vehicle: PreparedVehicle, state: VehicleState, module: string): StateResult {
  const answer = scan(vehicle, state, module);
  if (!answer.ok) return answer;
  const memory = state.slow.modules[module];
  if (!answer.value.ok || !memory) return advance(vehicle, state, changeSeconds.clear);
  const cleared: ModuleMemory = {
    ...memory,
    failingFor: {},
    status: mapRecord(memory.status, () => clearedStatus),
    held: [],
  };
  const slow = { ...state.slow, modules: { ...state.slow.modules, [module]: cleared } };
  return advance(vehicle, { ...state, slow }, changeSeconds.clear);
}

const unknownId = (id: string, kind: string): VehicleError => ({
  code: "unknown_id",
  path: id,
  message: `there is no ${kind} ${id}`,
});

function conditionError(values: ConditionValues, index: VehicleIndex): VehicleError | undefined {
  for (const [name, value] of Object.entries(values)) {
    const [message] = conditionProblems({ [name]: value }, index);
    if (message) return { code: "invalid_condition", path: `conditions.${name}`, message };
  }
  return undefined;
}
