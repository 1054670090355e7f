import { z } from "zod";
import { vehicleDocumentSchema } from "../document/vehicle-document";

/** Stays as long as `format` does. */
const schemaId = "urn:probeworthy:vehicle:1";

/**
 * The form of a vehicle document as JSON Schema (draft 2020-12). References between parts (that a conductor's end is there, that a
 * condition has such an option) are beyond a schema: `parseVehicle` and `validateVehicle` say those.
 */
export function vehicleJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...form } = z.toJSONSchema(vehicleDocumentSchema, { io: "input" });
  return {
    $schema,
    $id: schemaId,
    title: "Vehicle",
    description:
      "A vehicle's electrical system: conditions to set, components, connectors, conductors, splices, ground points, symptoms and systems. " +
      "Designators follow IEC 81346, terminals DIN 72552, colours IEC 60757. Ohms, volts, amperes, metres and mm² throughout.",
    ...form,
  };
}
