import {
  type Circuit,
  type CircuitElement,
  type OperatingPoint,
  prepareCircuit,
  type StartingPoint,
} from "@probeworthy/circuit";
import type { CompiledVehicle } from "../compile/compile-vehicle";
import type { ElementSetter } from "../compile/network-builder";
import type { VehicleDocument } from "../document/vehicle-document";
import { err, ok, type Result } from "../result";
import type { VehicleError } from "../simulation/types";

const unsolvable = (message: string): VehicleError => ({ code: "unsolvable", message });

/** A prepared circuit that remembers the last value of every element, so that setting the same value costs nothing. */
export class LiveCircuit implements ElementSetter {
  private readonly last = {
    ohms: new Map<string, number>(),
    volts: new Map<string, number>(),
    amps: new Map<string, number>(),
    gain: new Map<string, number>(),
    quiescentAmps: new Map<string, number>(),
  };
  private problem: VehicleError | undefined;

  /** `start` is where every fresh solve begins: fixed by the document, so that no answer hangs on the one before. */
  constructor(
    private readonly circuit: Circuit,
    private readonly start: StartingPoint | undefined,
  ) {}

  ohms(id: string, value: number): void {
    this.write(id, "ohms", value);
  }
  volts(id: string, value: number): void {
    this.write(id, "volts", value);
  }
  amps(id: string, value: number): void {
    this.write(id, "amps", value);
  }
  gain(id: string, value: number): void {
    this.write(id, "gain", value);
  }
  quiescent(id: string, amps: number): void {
    this.write(id, "quiescentAmps", amps);
  }

  private write(id: string, field: keyof typeof this.last, value: number): void {
    const last = this.last[field];
    if (last.get(id) === value) return;
    const outcome = this.circuit.set(id, { [field]: value });
    if (outcome.ok) last.set(id, value);
    else this.problem ??= unsolvable(outcome.error.message);
  }

  /**
   * Solves with the values written so far. `fresh` starts from the vehicle's fixed starting point instead of from the last
   * solution, so that an answer depends on the state asked about and not on what was asked before.
   */
  solve(fresh: boolean): Result<OperatingPoint, VehicleError> {
    if (this.problem) {
      const error = this.problem;
      this.problem = undefined;
      return err(error);
    }
    const point = this.circuit.operatingPoint(
      fresh ? { warmStart: false, ...(this.start ? { startFrom: this.start } : {}) } : {},
    );
    return point.ok ? point : err(unsolvable(point.error.message));
  }
}

const caches = new WeakMap<VehicleDocument, Map<string, LiveCircuit>>();
/** Instruments and shorts come and go; their circuits are kept while logs are replayed, the oldest dropped first. */
const cacheSize = 64;

/**
 * The circuit of a vehicle with extra elements between its nodes. Vehicles made from one document share it when their
 * faults leave the topology alone; every settle writes all values that may differ.
 */
export function liveCircuit(
  compiled: CompiledVehicle,
  extra: readonly CircuitElement[],
): Result<LiveCircuit, VehicleError> {
  // A current source is kept at 0 A in the key and set afterwards: a probe tries several currents at one place.
  const shape = extra.map((element) =>
    element.kind === "currentSource" ? { ...element, amps: 0 } : element,
  );
  const key = `${compiled.topology}|${extra.length === 0 ? "" : JSON.stringify(shape)}`;
  const cache = caches.get(compiled.document) ?? new Map<string, LiveCircuit>();
  caches.set(compiled.document, cache);
  const found = cache.get(key);
  if (found) return ok(withCurrents(found, extra));
  const circuit = prepareCircuit({ ground: "body", elements: [...compiled.elements, ...shape] });
  if (!circuit.ok) return err(unsolvable(circuit.error.message));
  // The first solve fixes the order of elimination. It is made with the faultless figures, so that the last bits of
  // later answers do not depend on which vehicle was asked first; whether it succeeds does not matter here.
  circuit.value.operatingPoint();
  const live = new LiveCircuit(circuit.value, circuit.value.startingPoint());
  if (cache.size >= cacheSize) {
    const oldest = cache.keys().next().value;
    if (oldest !== undefined) cache.delete(oldest);
  }
  cache.set(key, live);
  return ok(withCurrents(live, extra));
}

function withCurrents(live: LiveCircuit, extra: readonly CircuitElement[]): LiveCircuit {
  for (const element of extra) if (element.kind === "currentSource") live.amps(element.id, element.amps);
  return live;
}
