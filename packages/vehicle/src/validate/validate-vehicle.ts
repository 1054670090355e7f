import { checkExpressions } from "../document/check-expressions";
import { checkReferences } from "../document/check-references";
import type { VehicleDocument } from "../document/vehicle-document";
import { createVehicleIndex } from "../document/vehicle-index";
import type { DocumentMessage } from "../simulation/types";
import { checkBus } from "./check-bus";
import { checkConnections } from "./check-connections";
import { checkProtection } from "./check-protection";

/**
 * Explains what is wrong with a document, each message with its path and what would be right: dangling references and
 * duplicate designators; then floating terminals, sensors without a return, modules without a ground, feeds without a
 * fuse, fuses larger than their conductors, a bus without two terminators. Empty when nothing is wrong. The circuit
 * questions are asked only once every reference leads somewhere.
 */
export function validateVehicle(document: VehicleDocument): DocumentMessage[] {
  const index = createVehicleIndex(document);
  const references = [...checkReferences(document, index), ...checkExpressions(document, index)];
  if (references.length > 0) return references;
  return [
    ...checkConnections(document, index),
    ...checkProtection(document, index),
    ...checkBus(document, index),
  ];
}
