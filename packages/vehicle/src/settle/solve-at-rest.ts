import type { CompiledVehicle } from "../compile/compile-vehicle";
import { ok, type Result } from "../result";
import type { ModuleMemory, VehicleError, VehicleState } from "../simulation/types";
import { ByState } from "./by-state";
import { type Solution, solveVehicle } from "./solve-vehicle";

const known = new ByState<Result<Solution, VehicleError>>();

/** `solveVehicle` with nothing connected; a state that has been solved is not solved again. */
export const solveAtRest = (compiled: CompiledVehicle, state: VehicleState): Result<Solution, VehicleError> =>
  known.get(compiled, state) ?? known.set(compiled, state, solveVehicle(compiled, state));

/**
 * `stateAfter` a solution with nothing connected. When the modules rest as they were taken to stand, solving again could
 * only give the same solution, so it is handed on: time that passes in pieces starts each piece from where the last one
 * ended.
 */
export function stateAtRest(
  compiled: CompiledVehicle,
  state: VehicleState,
  solution: Solution,
): VehicleState {
  const rested = stateAfter(state, solution);
  const same =
    Object.entries(rested.slow.modules).every(([id, memory]) => stood(state.slow.modules[id], memory)) &&
    (state.slow.pulledIn ?? []).join() === solution.pulledIn.join();
  if (same) known.set(compiled, rested, ok(solution));
  return rested;
}

/** The state with the modules as they came to rest in a solution. */
export function stateAfter(state: VehicleState, { runs, pulledIn }: Solution): VehicleState {
  const modules = Object.fromEntries(
    runs.map(({ module, memory, powered, awake, asleep, held }): [string, ModuleMemory] => [
      module.id,
      {
        estimates: memory?.estimates ?? {},
        failingFor: memory?.failingFor ?? {},
        status: memory?.status ?? {},
        powered,
        held: powered ? held : [],
        ...(asleep ? { asleep } : {}),
        ...(awake && memory?.idleSeconds !== undefined ? { idleSeconds: memory.idleSeconds } : {}),
      },
    ]),
  );
  const { pulledIn: _, ...slow } = state.slow;
  return { ...state, slow: { ...slow, modules, ...(pulledIn.length > 0 ? { pulledIn } : {}) } };
}

const stood = (before: ModuleMemory | undefined, after: ModuleMemory): boolean =>
  before !== undefined &&
  before.powered === after.powered &&
  before.asleep === after.asleep &&
  before.idleSeconds === after.idleSeconds &&
  before.held.length === after.held.length &&
  before.held.every((code, position) => code === after.held[position]);
