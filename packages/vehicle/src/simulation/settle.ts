import type { PrimitiveElement } from "@probeworthy/circuit";
import { type CompiledVehicle, requireCompiled } from "../compile/compile-vehicle";
import { nodeOf, parsePoint } from "../points/point-ids";
import { ok, type Result } from "../result";
import { ByState } from "../settle/by-state";
import { mapFixtures } from "../settle/map-fixtures";
import { solveAtRest, stateAfter } from "../settle/solve-at-rest";
import { type Solution, solveVehicle } from "../settle/solve-vehicle";
import { average } from "../settle/time-share";
import { conditionNumber, worldReadings } from "../settle/world";
import type {
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
  fixtures: readonly PrimitiveElement[] = [],
): Result<Settled, VehicleError> {
  const compiled = requireCompiled(vehicle);
  if (fixtures.length > 0) return settleWith(compiled, state, fixtures);
  const known = settledStates.get(compiled, state);
  if (known) return known;
  const solution = solveAtRest(compiled, state);
  const settled = solution.ok ? ok(toSettled(compiled, state, solution.value)) : solution;
  return settledStates.set(compiled, state, settled);
}

const settledStates = new ByState<Result<Settled, VehicleError>>();

function settleWith(
  compiled: CompiledVehicle,
  state: VehicleState,
  fixtures: readonly PrimitiveElement[],
): Result<Settled, VehicleError> {
  const extra = mapFixtures(compiled, state, fixtures);
  if (!extra.ok) return extra;
  const solution = solveVehicle(compiled, state, { extra: extra.value });
  if (!solution.ok) return solution;
  const bench: Bench = {
    fixtures: new Set(fixtures.map(({ id }) => id)),
    blades: new Set(
      extra.value.flatMap((element) => (element.kind === "resistor" ? [element.a, element.b] : [])),
    ),
  };
  return ok(toSettled(compiled, state, solution.value, bench));
}

/** What an instrument adds to the network: ids that carry a current, and nodes among which blades of pulled fuses are. */
interface Bench {
  readonly fixtures: ReadonlySet<string>;
  readonly blades: ReadonlySet<string>;
}

const nothing: Bench = { fixtures: new Set(), blades: new Set() };

/** The public face of a solution. */
function toSettled(
  compiled: CompiledVehicle,
  state: VehicleState,
  solution: Solution,
  { fixtures, blades }: Bench = nothing,
): Settled {
  const { shares, runs } = solution;
  const amps = (id: string): number => {
    const element = fixtures.has(id) ? id : elementOf(id, compiled);
    if (element === undefined) throw new Error(`no current is defined for ${id}`);
    const sign = compiled.index.components.get(id)?.kind === "battery" ? -1 : 1;
    return average(shares, (point) => sign * point.amps(element));
  };
  const node = (id: string): string => requireNode(id, state, compiled, blades);
  const modules: Record<string, ModuleSnapshot> = {};
  for (const run of runs) {
    const { id } = run.module;
    modules[id] = {
      powered: run.powered,
      ...(run.asleep ? { asleep: true } : {}),
      signals: run.awake ? Object.fromEntries(run.signals) : {},
      heard: Object.fromEntries([...run.heard].map(([message, heard]) => [message, run.awake && heard])),
      supplyVolts: run.supplyVolts,
    };
  }
  return {
    state: stateAfter(state, solution),
    volts: (id) => {
      const at = node(id);
      return average(shares, (point) => point.volts(at));
    },
    amps,
    alternating: (id, against) => solution.alternating(node(id), node(against)),
    modules,
    symptoms: observeSymptoms(compiled, state, modules, solution, amps),
  };
}

const carriers: readonly string[] = [
  "battery",
  "fuse",
  "motor",
  "lamp",
  "twoFilamentLamp",
  "ledLamp",
  "resistor",
  "diode",
  "thermistor",
  "relay",
  "chargingSource",
];

/** The element whose current is asked for by a designator, `K1:coil` or `E5:second`. */
function elementOf(id: string, { index }: CompiledVehicle): string | undefined {
  if (index.conductors.has(id)) return id;
  const [owner = "", part] = id.split(":");
  const kind = index.components.get(owner)?.kind;
  if (kind === undefined || !carriers.includes(kind)) return undefined;
  if (part === undefined || (kind === "twoFilamentLamp" && part === "first")) return owner;
  if (kind === "relay" && part === "coil") return `${owner}#coil`;
  return kind === "twoFilamentLamp" && part === "second" ? `${owner}#second` : undefined;
}

function requireNode(
  id: string,
  state: VehicleState,
  compiled: CompiledVehicle,
  blades: ReadonlySet<string>,
): string {
  const point = parsePoint(id, compiled.index);
  if (!point) throw new Error(`there is no test point ${id}`);
  // The blades of a fitted fuse touch its sockets; out of the holder and with nothing on them they are at no potential.
  const node = nodeOf(point, compiled.index);
  if (point.kind === "blade") {
    if (!state.pulledFuses.includes(point.fuse)) return `${point.fuse}:${point.terminal}`;
    return blades.has(node) ? node : "body";
  }
  return compiled.nodes.has(node) ? node : "body";
}

function observeSymptoms(
  compiled: CompiledVehicle,
  state: VehicleState,
  modules: Readonly<Record<string, ModuleSnapshot>>,
  { shares, pulledIn }: Solution,
  amps: (id: string) => number,
): SymptomObservation[] {
  const part = (id: string) => compiled.motorParts.find((motor) => motor.id === id);
  const readings = {
    ...worldReadings((name) => conditionNumber(name, state, compiled)),
    signal: (name: string, of: string) => modules[of]?.signals[name] ?? 0,
    loadAmps: (id: string, filament?: "first" | "second") =>
      amps(filament === "second" ? `${id}:second` : id),
    speedOf: (id: string) =>
      part(id)?.turns ? average(shares, (point) => point.quantity(id, "radiansPerSecond")) : 0,
    torqueOf: (id: string) => amps(id) * (part(id)?.torquePerAmp ?? 0),
    pulledIn: (id: string) => (pulledIn.includes(id) ? 1 : 0),
  };
  return compiled.document.symptoms.flatMap((symptom, position) => {
    const value = compiled.symptoms[position]?.value(readings) ?? 0;
    const band =
      symptom.bands.find(({ below }) => below === undefined || value < below) ?? symptom.bands.at(-1);
    return band ? [{ id: symptom.id, title: symptom.title, text: band.text, normal: band.normal }] : [];
  });
}
