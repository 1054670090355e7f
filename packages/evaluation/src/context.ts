import {
  type Fault,
  type PreparedVehicle,
  prepareVehicle,
  type VehicleDocument,
  type VehicleState,
} from "@probeworthy/vehicle";
import type { ScenarioDocument } from "./scenario";
import type { Variant } from "./variant";

/** Everything an attempt rests on. The variant is secret, so a context never leaves the server. */
export interface AttemptContext {
  readonly scenario: ScenarioDocument;
  readonly document: VehicleDocument;
  readonly variant: Variant;
}

/** Prepared vehicles kept per document; beyond this the one unused longest is dropped. */
const kept = 48;
const cache = new WeakMap<VehicleDocument, Map<string, PreparedVehicle>>();

/**
 * The document with these faults, ready to simulate. Preparing costs far more than a reading, and `decide` is called
 * once a request, so the result is kept for as long as the document object lives: hand in the same object again
 * (cache parsed documents by version) to profit from it.
 * Throws when the vehicle refuses the faults: a variant or a candidate has been checked before it gets here.
 */
export function prepared(document: VehicleDocument, faults: readonly Fault[]): PreparedVehicle {
  let vehicles = cache.get(document);
  if (vehicles === undefined) {
    vehicles = new Map();
    cache.set(document, vehicles);
  }
  const key = JSON.stringify(faults);
  const known = vehicles.get(key);
  if (known !== undefined) {
    vehicles.delete(key); // moves to the young end
    vehicles.set(key, known);
    return known;
  }
  const made = prepareVehicle(document, [...faults]);
  if (!made.ok) throw new Error(`vehicle ${document.id} refuses its faults: ${JSON.stringify(made.error)}`);
  vehicles.set(key, made.value);
  const oldest = vehicles.keys().next();
  if (vehicles.size > kept && oldest.done !== true) vehicles.delete(oldest.value);
  return made.value;
}

/** The learner's car. */
export const learnersCar = (context: AttemptContext): PreparedVehicle =>
  prepared(context.document, context.variant.faults);

/** The parts of a state that say how the car stands; what `contextSchema` records. */
export function standing(car: VehicleState): {
  conditions: VehicleState["conditions"];
  unplugged: string[];
  pulledFuses: string[];
} {
  return {
    conditions: car.conditions,
    unplugged: [...car.unplugged],
    pulledFuses: [...car.pulledFuses],
  };
}
