import { z } from "zod";
import { err, ok, type Result } from "../result";
import type { DocumentMessage, VehicleError } from "../simulation/types";
import { checkExpressions } from "./check-expressions";
import { checkReferences } from "./check-references";
import { type VehicleDocument, vehicleDocumentSchema } from "./vehicle-document";
import { createVehicleIndex } from "./vehicle-index";

const part = z.record(z.string(), z.unknown());
const parts = z.array(part).default([]);

/**
 * What an author may save half-done: only the format, an id and a title must be there; the parts are kept as
 * written and checked when the draft is made executable.
 */
export const vehicleDraftSchema = z.strictObject({
  format: z.literal("probeworthy-vehicle-1"),
  id: z.string().min(1),
  title: z.string().min(1),
  description: z.string().default(""),
  nominalVolts: z.number().positive().default(12),
  conditions: parts,
  components: parts,
  connectors: parts,
  conductors: parts,
  splices: parts,
  groundPoints: parts,
  symptoms: parts,
  systems: parts,
  drawing: part.optional(),
});
export type VehicleDraft = z.infer<typeof vehicleDraftSchema>;

/** `["conductors", 3, "from"]` → `conductors[3].from`. */
const formatPath = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (text, key) =>
      typeof key === "number" ? `${text}[${key}]` : text ? `${text}.${String(key)}` : String(key),
    "",
  );

const toMessages = (error: z.ZodError): DocumentMessage[] =>
  error.issues.map((issue) => ({ severity: "error", path: formatPath(issue.path), message: issue.message }));

/** Parses a draft. Errors: `invalid_document` with one message per path that cannot be kept. */
export function parseVehicleDraft(input: unknown): Result<VehicleDraft, VehicleError> {
  const parsed = vehicleDraftSchema.safeParse(input);
  return parsed.success
    ? ok(parsed.data)
    : err({ code: "invalid_document", messages: toMessages(parsed.error) });
}

/**
 * Parses an executable document: the schema holds and every cross reference leads somewhere, so that the
 * document can be compiled and simulated. Errors: `invalid_document` with every problem and its path.
 * Questions of good practice (fuse sizes, returns, terminators) are for `validateVehicle`.
 */
export function parseVehicle(input: unknown): Result<VehicleDocument, VehicleError> {
  const parsed = vehicleDocumentSchema.safeParse(input);
  if (!parsed.success) return err({ code: "invalid_document", messages: toMessages(parsed.error) });
  const index = createVehicleIndex(parsed.data);
  const messages = [...checkReferences(parsed.data, index), ...checkExpressions(parsed.data, index)];
  return messages.length === 0 ? ok(parsed.data) : err({ code: "invalid_document", messages });
}
