import {
  type Circuit,
  type CircuitElement,
  type OperatingPoint,
  prepareCircuit,
  type Responses,
  type SolveOptions,
  type StartingPoint,
} from "@probeworthy/circuit";
import type { CompiledVehicle } from "../compile/compile-vehicle";
import type { ElementSetter } from "../compile/network-builder";
import type { VehicleDocument } from "../document/vehicle-document";
import { err, ok, type Result } from "../result";
import type { VehicleError } from "../simulation/types";

type Attachable = Parameters<Circuit["attach"]>[0];

const unsolvable = (message: string): VehicleError => ({ code: "unsolvable", message });

/** A prepared circuit that remembers the last value of every element, so that setting the same value costs nothing. */
export class LiveCircuit implements ElementSetter {
  /** By field, then by element. */
  private readonly last = new Map<string, Map<string, number | boolean>>();
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

  field(id: string, name: string, value: number | boolean): void {
    this.write(id, name, value);
  }

  private write(id: string, field: string, value: number | boolean): void {
    const last = this.last.get(field) ?? new Map<string, number | boolean>();
    if (last.get(id) === value) return;
    this.last.set(field, last);
    const outcome = this.circuit.set(id, { [field]: value });
    if (outcome.ok) last.set(id, value);
    else this.problem ??= unsolvable(outcome.error.message);
  }

  /**
   * Lays an instrument's elements across the circuit, which is far cheaper than preparing a circuit with them. False, and
   * nothing is laid, when one of them needs that all the same: a node of its own, or a kind with an unknown of its own.
   */
  attach(elements: readonly CircuitElement[]): boolean {
    for (const [count, element] of elements.entries()) {
      if (isAttachable(element) && this.circuit.attach(element).ok) continue;
      this.detach(elements.slice(0, count));
      return false;
    }
    return true;
  }

  /** Takes attached elements away; the circuit is then as if they had never been there. */
  detach(elements: readonly CircuitElement[]): void {
    for (const { id } of elements) {
      const outcome = this.circuit.detach(id);
      if (!outcome.ok) throw new Error(outcome.error.message);
      for (const last of this.last.values()) last.delete(id);
    }
  }

  /** Thévenin's equivalent between two nodes with the values written so far, from the last solution on. */
  thevenin(a: string, b: string): Result<{ openVolts: number; ohms: number }, VehicleError> {
    const problem = this.takeProblem();
    if (problem) return err(problem);
    const source = this.circuit.thevenin(a, b);
    return source.ok ? source : err(unsolvable(source.error.message));
  }

  /** How the network answers to currents through pairs of nodes, about the solution with the values written so far. */
  responses(pairs: readonly (readonly [string, string])[]): Result<Responses, VehicleError> {
    const problem = this.takeProblem();
    if (problem) return err(problem);
    const answer = this.circuit.responses(pairs);
    return answer.ok ? answer : err(unsolvable(answer.error.message));
  }

  /**
   * Solves with the values written so far. `fresh` starts from the vehicle's fixed starting point instead of from the last
   * solution, so that an answer depends on the state asked about and not on what was asked before.
   */
  solve(fresh: boolean): Result<OperatingPoint, VehicleError> {
    const problem = this.takeProblem();
    if (problem) return err(problem);
    const point = this.circuit.operatingPoint(this.from(fresh));
    return point.ok ? point : err(unsolvable(point.error.message));
  }

  /** `solve` with an answer that holds until the next solve only, and costs no memory. */
  glance(fresh: boolean): Result<OperatingPoint, VehicleError> {
    const problem = this.takeProblem();
    if (problem) return err(problem);
    const point = this.circuit.solve(this.from(fresh));
    return point.ok ? point : err(unsolvable(point.error.message));
  }

  private from(fresh: boolean): SolveOptions {
    return fresh ? { warmStart: false, ...(this.start ? { startFrom: this.start } : {}) } : {};
  }

  private takeProblem(): VehicleError | undefined {
    const { problem } = this;
    this.problem = undefined;
    return problem;
  }
}

const isAttachable = (element: CircuitElement): element is Attachable => {
  const kinds: readonly string[] = [
    "resistor",
    "voltageSource",
    "currentSource",
    "switch",
    "diode",
    "filament",
    "curve",
  ] satisfies Attachable["kind"][];
  return kinds.includes(element.kind);
};

const caches = new WeakMap<VehicleDocument, Map<string, LiveCircuit>>();
/** Faults and unusual instruments come and go; their circuits are kept while logs are replayed, the oldest dropped first. */
const cacheSize = 64;

/**
 * Lets `use` work with the circuit of a vehicle and extra elements on it. Vehicles made from one document share a circuit
 * when their faults leave the topology alone; every settle writes all values that may differ. Extra elements between
 * nodes that exist are attached to that circuit and taken away afterwards; others have a circuit prepared with them.
 * `use` must not ask for a circuit itself.
 */
export function withCircuit<Value>(
  compiled: CompiledVehicle,
  extra: readonly CircuitElement[],
  use: (live: LiveCircuit) => Result<Value, VehicleError>,
): Result<Value, VehicleError> {
  const bare = liveCircuit(compiled, []);
  if (!bare.ok) return bare;
  if (extra.length === 0) return use(bare.value);
  if (bare.value.attach(extra)) {
    try {
      return use(bare.value);
    } finally {
      bare.value.detach(extra);
    }
  }
  const whole = liveCircuit(compiled, extra);
  return whole.ok ? use(whole.value) : whole;
}

/** The circuit of a vehicle prepared with extra elements. */
function liveCircuit(
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
