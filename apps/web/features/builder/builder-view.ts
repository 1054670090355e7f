import { conditionSchema } from "@probeworthy/vehicle";
import { z } from "zod";

const placeSchema = z.strictObject({
  place: z.string(),
  part: z.string().nullable(),
  other: z.string().nullable(),
  title: z.string(),
  group: z.string(),
});
export type PlaceOption = z.infer<typeof placeSchema>;

export const scenarioMessageSchema = z.strictObject({
  /** `schema`: the form is not complete. `check`: complete, but this vehicle says otherwise. */
  stage: z.enum(["schema", "check"]),
  severity: z.enum(["error", "warning"]),
  /** Dotted path in the form: `pool.0.faults.1.at`. */
  path: z.string(),
  message: z.string(),
});
export type ScenarioMessage = z.infer<typeof scenarioMessageSchema>;

/** Everything the builder needs. For authors only: the draft names the faults. */
export const builderViewSchema = z.strictObject({
  scenarioId: z.string(),
  title: z.string(),
  /** Moment of the last save, handed back with the next one. */
  savedAt: z.string(),
  hasDraft: z.boolean(),
  publishedNumber: z.number().int().nullable(),
  document: z.record(z.string(), z.unknown()),
  messages: z.array(scenarioMessageSchema),
  vehicle: z.strictObject({
    title: z.string(),
    systems: z.array(z.strictObject({ id: z.string(), title: z.string() })),
    conditions: z.array(conditionSchema),
    /** Places by kind of fault. */
    places: z.record(z.string(), z.array(placeSchema)),
  }),
});
export type BuilderView = z.infer<typeof builderViewSchema>;

export const draftSavedSchema = z.strictObject({
  savedAt: z.string(),
  messages: z.array(scenarioMessageSchema),
});

/** One drawn variant for the author: what is broken and what a learner will notice. */
export const previewSchema = z.strictObject({
  seed: z.string(),
  title: z.string(),
  faults: z.array(z.string()),
  complaint: z.string(),
  conditions: z.array(z.string()),
  situations: z.array(
    z.strictObject({
      title: z.string(),
      noticed: z.array(
        z.strictObject({ id: z.string(), title: z.string(), text: z.string(), normal: z.boolean() }),
      ),
      modules: z.array(z.strictObject({ id: z.string(), answered: z.boolean(), codes: z.array(z.string()) })),
    }),
  ),
});
export type PreviewView = z.infer<typeof previewSchema>;
