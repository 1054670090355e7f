import type { CircuitElement } from "@probeworthy/circuit";
import type { Component, ComponentOf } from "../document/component";
import type { Fault } from "../document/fault";
import type { VehicleDocument } from "../document/vehicle-document";
import { createVehicleIndex, type VehicleIndex } from "../document/vehicle-index";
import { ok, type Result } from "../result";
import { compileExpression, type Evaluate } from "../simulation/evaluate";
import type { PreparedVehicle, VehicleError } from "../simulation/types";
import { type CompiledParts, compileComponent } from "./compile-components";
import { compileHarness } from "./compile-harness";
import { type CompiledModule, compileModule } from "./compile-module";
import { buildFaultOverlay, type FaultOverlay } from "./fault-overlay";
import { NetworkBuilder, type WorldUpdate } from "./network-builder";

/** Everything that depends on the document and its faults only: the network and the laws as closures. */
export interface CompiledVehicle extends Readonly<CompiledParts> {
  readonly document: VehicleDocument;
  readonly index: VehicleIndex;
  readonly faults: readonly Fault[];
  readonly elements: readonly CircuitElement[];
  readonly updates: readonly WorldUpdate[];
  /** Tells the topology from that of the same document without faults. */
  readonly topology: string;
  /** Electrical nodes of the network by name. */
  readonly nodes: ReadonlySet<string>;
  readonly modules: readonly CompiledModule[];
  readonly motors: readonly ComponentOf<"motor">[];
  readonly fuses: readonly ComponentOf<"fuse">[];
  readonly batteries: readonly ComponentOf<"battery">[];
  /** Rating of each fuse, A, as it is fitted. */
  readonly fuseRatings: ReadonlyMap<string, number>;
  /** What faults do to modules' outputs, buses and scan values. */
  readonly overlay: FaultOverlay;
  /** Factors on the internal resistance of batteries that a fault has aged. */
  readonly weakBatteries: ReadonlyMap<string, number>;
  readonly symptoms: readonly { readonly value: Evaluate }[];
  /** Name of the number condition that gives the temperature around the harness, if any. */
  readonly ambientCondition: string | undefined;
}

const compiled = new WeakMap<PreparedVehicle, CompiledVehicle>();

const ofKind = <K extends Component["kind"]>(document: VehicleDocument, kind: K): ComponentOf<K>[] =>
  document.components.filter((component): component is ComponentOf<K> => component.kind === kind);

/**
 * Applies faults to a document and makes it ready to be simulated. Both arguments are kept, not copied.
 * Errors: `invalid_fault` naming the path of a place, component or terminal that does not exist.
 */
export function prepareVehicle(
  document: VehicleDocument,
  faults: readonly Fault[] = [],
): Result<PreparedVehicle, VehicleError> {
  const index = createVehicleIndex(document);
  const overlay = buildFaultOverlay(faults, index, document.nominalVolts);
  if (!overlay.ok) return overlay;
  const builder = new NetworkBuilder(overlay.value);
  compileHarness(document, index, overlay.value, builder);
  const parts: CompiledParts = { relays: [], motorParts: [], pulsers: [], alternators: [] };
  for (const component of document.components) compileComponent(component, builder, parts);
  const modules = ofKind(document, "module").map((module) => compileModule(module, builder));
  const motors = ofKind(document, "motor");
  const fuses = ofKind(document, "fuse");
  const prepared: PreparedVehicle = { document, faults };
  compiled.set(prepared, {
    document,
    index,
    faults,
    elements: builder.elements,
    updates: builder.updates,
    topology: builder.topology,
    nodes: builder.nodes,
    modules,
    motors,
    fuses,
    ...parts,
    overlay: overlay.value,
    fuseRatings: new Map(
      fuses.map(({ id, ratingAmps }) => [id, overlay.value.wrongFuses.get(id) ?? ratingAmps]),
    ),
    batteries: ofKind(document, "battery"),
    weakBatteries: new Map(
      faults.flatMap((fault) =>
        fault.kind === "weakBattery" ? [[fault.component, fault.internalOhmsFactor] as const] : [],
      ),
    ),
    symptoms: document.symptoms.map((symptom) => ({ value: compileExpression(symptom.value) })),
    ambientCondition: findAmbient(motors, index),
  });
  return ok(prepared);
}

/** The motors' ambient condition, else a number condition called `ambientTemperature`; without either, 20 °C. */
function findAmbient(motors: readonly ComponentOf<"motor">[], index: VehicleIndex): string | undefined {
  const heated = motors.find(({ heat }) => heat !== undefined);
  const name = heated?.heat?.ambientCondition ?? "ambientTemperature";
  return index.conditions.get(name)?.kind === "number" ? name : undefined;
}

/** The compiled form of a prepared vehicle; only `prepareVehicle` makes prepared vehicles. */
export function requireCompiled(vehicle: PreparedVehicle): CompiledVehicle {
  const found = compiled.get(vehicle);
  if (!found) throw new Error("a prepared vehicle comes from prepareVehicle and is passed on unchanged");
  return found;
}
