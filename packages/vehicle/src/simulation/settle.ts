import type { CircuitElement } from "@probeworthy/circuit";
import { type CompiledVehicle, requireCompiled } from "../compile/compile-vehicle";
import { nodeOf, parsePoint } from "../points/point-ids";
import { ok, type Result } from "../result";
import { average } from "../settle/bus";
import { mapFixtures } from "../settle/map-fixtures";
import { type Solution, solveVehicle } from "../settle/solve-vehicle";
import { conditionNumber, worldReadings } from "../settle/world";
import type {
  ModuleMemory,
  ModuleSnapshot,
  PreparedVehicle,
  Settled,
  SymptomObservation,
  VehicleError,
  VehicleState,
} from "./types";

/**
 * Settles a vehicle in one instant: network, control modules and bus agree with each other. No time passes: fuses do
 * not open, codes do not mature, nothing warms. Deterministic: the same vehicle, state and fixtures give the same answer.
 *
 * `fixtures` are circuit elements (an instrument) whose nodes are test point ids, or private nodes of the instrument,
 * which start with a small letter (`meter`, `meter2`); their ids answer to `amps` with the circuit's sign (into the
 * first terminal).
 *
 * Errors: `unknown_point` for a fixture on a point the vehicle does not have; `unsolvable`.
 */
export function settle(
  vehicle: PreparedVehicle,
  state: VehicleState,
  fixtures: readonly CircuitElement[] = [],
): Result<Settled, VehicleError> {
  const compiled = requireCompiled(vehicle);
  if (fixtures.length > 0) return settleOnce(compiled, state, fixtures);
  // States are plain data that nobody changes, so the same object settles to the same answer: several readings of one
  // state cost one search.
  const known = settledStates.get(compiled)?.get(state);
  if (known) return known;
  const settled = settleOnce(compiled, state, fixtures);
  const states = settledStates.get(compiled) ?? new WeakMap<VehicleState, Result<Settled, VehicleError>>();
  settledStates.set(compiled, states.set(state, settled));
  return settled;
}

const settledStates = new WeakMap<CompiledVehicle, WeakMap<VehicleState, Result<Settled, VehicleError>>>();

function settleOnce(
  compiled: CompiledVehicle,
  state: VehicleState,
  fixtures: readonly CircuitElement[],
): Result<Settled, VehicleError> {
  const extra = mapFixtures(compiled, state, fixtures);
  if (!extra.ok) return extra;
  const solution = solveVehicle(compiled, state, { extra: extra.value });
  if (!solution.ok) return solution;
  return ok(toSettled(compiled, state, solution.value, new Set(fixtures.map(({ id }) => id))));
}

/** The public face of a solution. */
export function toSettled(
  compiled: CompiledVehicle,
  state: VehicleState,
  solution: Solution,
  fixtures: ReadonlySet<string> = new Set(),
): Settled {
  const { shares, runs } = solution;
  const amps = (id: string): number => {
    const component = compiled.index.components.get(id);
    if (component?.kind === "battery") return average(shares, (point) => -point.amps(id));
    const carries =
      fixtures.has(id) ||
      compiled.index.conductors.has(id) ||
      (component !== undefined && carriers.includes(component.kind));
    if (!carries) throw new Error(`no current is defined for ${id}`);
    return average(shares, (point) => point.amps(id));
  };
  const modules: Record<string, ModuleSnapshot> = {};
  const memories: Record<string, ModuleMemory> = {};
  for (const run of runs) {
    const { id } = run.module;
    modules[id] = {
      powered: run.powered,
      signals: run.powered ? Object.fromEntries(run.signals) : {},
      heard: Object.fromEntries([...run.heard].map(([message, heard]) => [message, run.powered && heard])),
      supplyVolts: run.supplyVolts,
    };
    const memory = run.memory;
    memories[id] = {
      estimates: memory?.estimates ?? {},
      failingFor: memory?.failingFor ?? {},
      status: memory?.status ?? {},
      powered: run.powered,
      held: run.powered ? run.held : [],
    };
  }
  return {
    state: { ...state, slow: { ...state.slow, modules: memories } },
    volts: (id) => average(shares, (point) => point.volts(requireNode(id, state, compiled))),
    amps,
    modules,
    symptoms: observeSymptoms(compiled, state, modules, amps),
  };
}

const carriers: readonly string[] = [
  "fuse",
  "motor",
  "lamp",
  "resistor",
  "diode",
  "thermistor",
  "chargingSource",
];

function requireNode(id: string, state: VehicleState, compiled: CompiledVehicle): string {
  const point = parsePoint(id, compiled.index);
  if (!point) throw new Error(`there is no test point ${id}`);
  // The blades of a fitted fuse touch its sockets; out of the holder and with nothing on them they are at no potential.
  if (point.kind === "blade")
    return state.pulledFuses.includes(point.fuse) ? "body" : `${point.fuse}:${point.terminal}`;
  const node = nodeOf(point, compiled.index);
  return compiled.nodes.has(node) ? node : "body";
}

function observeSymptoms(
  compiled: CompiledVehicle,
  state: VehicleState,
  modules: Readonly<Record<string, ModuleSnapshot>>,
  amps: (id: string) => number,
): SymptomObservation[] {
  const readings = {
    ...worldReadings((name) => conditionNumber(name, state, compiled)),
    signal: (name: string, of: string) => modules[of]?.signals[name] ?? 0,
    loadAmps: amps,
  };
  return compiled.document.symptoms.flatMap((symptom, position) => {
    const value = compiled.symptoms[position]?.value(readings) ?? 0;
    const band =
      symptom.bands.find(({ below }) => below === undefined || value < below) ?? symptom.bands.at(-1);
    return band ? [{ id: symptom.id, title: symptom.title, text: band.text, normal: band.normal }] : [];
  });
}
