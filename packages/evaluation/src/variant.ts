import {
  type ConditionValues,
  conditionValuesSchema,
  err,
  type Fault,
  faultSchema,
  ok,
  prepareVehicle,
  type Result,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import { z } from "zod";
import { draw } from "./drawn-number";
import { stream, unit, weightedIndex } from "./random";
import type { FaultTemplate, ScenarioDocument } from "./scenario";

/** A scenario made concrete. Secret until the report is in. Plain data: store it with the attempt. */
export const variantSchema = z.strictObject({
  format: z.literal("probeworthy-variant-1"),
  scenario: z.string(),
  vehicle: z.string(),
  seed: z.string(),
  /** Id and title of the pool entry that was drawn. */
  candidate: z.string(),
  title: z.string(),
  normal: z.boolean(),
  faults: z.array(faultSchema),
  complaint: z.string(),
  /** Conditions the world sets for this variant (ambient temperature). */
  conditions: conditionValuesSchema,
});
export type Variant = z.infer<typeof variantSchema>;

export interface VariantError {
  readonly code: "wrong_vehicle" | "invalid_fault" | "invalid_vehicle";
  readonly message: string;
  /** Path in the scenario, `pool[2].faults[0].ohms`. */
  readonly path: string;
}

/** Degrees by which the ambient temperature of a variant may differ from the vehicle's usual one. */
const ambientSpread = 4;

/**
 * Draws the candidate by weight, its severities (three significant digits), the complaint's wording and the ambient
 * temperature. The same scenario, document and seed give the same variant, byte for byte. Part tolerances are not
 * drawn. Errors name the path in the scenario.
 */
export function makeVariant(
  scenario: ScenarioDocument,
  document: VehicleDocument,
  seed: string,
): Result<Variant, VariantError> {
  if (scenario.vehicle !== document.id) {
    return err({
      code: "wrong_vehicle",
      message: `the scenario is for the vehicle ${scenario.vehicle}, not ${document.id}`,
      path: "vehicle",
    });
  }
  const index = weightedIndex(
    stream(seed, "candidate"),
    scenario.pool.map((entry) => entry.weight),
  );
  const entry = scenario.pool[index];
  if (entry === undefined) throw new Error("a scenario has at least one candidate");
  const faults: Fault[] = [];
  for (const [position, template] of entry.faults.entries()) {
    const path = `pool[${index}].faults[${position}]`;
    const fault = concreteFault(template, (field, number) =>
      draw(number, stream(seed, `fault ${position} ${field}`)),
    );
    if (!fault.ok) {
      return err({ ...fault.error, path: [path, fault.error.path].filter(Boolean).join(".") });
    }
    faults.push(fault.value);
  }
  const prepared = prepareVehicle(document, faults);
  if (!prepared.ok) {
    const { error } = prepared;
    if (error.code === "invalid_document" || error.code === "unsolvable") {
      const message =
        error.code === "unsolvable" ? error.message : "the vehicle document cannot be simulated";
      return err({ code: "invalid_vehicle", message, path: "vehicle" });
    }
    return err({ code: "invalid_fault", message: error.message, path: `pool[${index}].${error.path}` });
  }
  const complaint =
    scenario.complaints[Math.floor(unit(stream(seed, "complaint")) * scenario.complaints.length)];
  return ok({
    format: "probeworthy-variant-1",
    scenario: scenario.id,
    vehicle: document.id,
    seed,
    candidate: entry.id,
    title: entry.title,
    normal: entry.normal ?? false,
    faults,
    complaint: complaint ?? "",
    conditions: drawAmbient(scenario, document, seed),
  });
}

/** Fills in the numbers of a template by `number(field, range)` and checks the result against the fault schema. */
export function concreteFault(
  template: FaultTemplate,
  number: (field: string, range: Exclude<FaultTemplate[string], string>) => number,
): Result<Fault, VariantError> {
  const filled = Object.fromEntries(
    Object.entries(template).map(([field, value]) => [
      field,
      typeof value === "string" ? value : number(field, value),
    ]),
  );
  const parsed = faultSchema.safeParse(filled);
  if (parsed.success) return ok(parsed.data);
  const issue = parsed.error.issues[0];
  return err({
    code: "invalid_fault",
    message: issue?.message ?? "not a fault",
    path: issue?.path.join(".") ?? "",
  });
}

/** Weather differs from job to job, unless the scenario fixes it: every °C condition that is set by the world. */
function drawAmbient(scenario: ScenarioDocument, document: VehicleDocument, seed: string): ConditionValues {
  const drawn: ConditionValues = {};
  for (const condition of document.conditions) {
    if (condition.kind !== "number" || condition.fixed !== true || condition.unit !== "°C") continue;
    if (scenario.startConditions[condition.name] !== undefined) continue;
    const share = unit(stream(seed, `condition ${condition.name}`));
    const value = Math.round(condition.initial + (2 * share - 1) * ambientSpread);
    drawn[condition.name] = Math.min(condition.maximum, Math.max(condition.minimum, value));
  }
  return drawn;
}
