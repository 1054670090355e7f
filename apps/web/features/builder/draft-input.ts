import { z } from "zod";

/** A moment the author's screen has seen; null saves over whatever is there, on purpose. */
const seenAt = z.iso.datetime({ offset: true }).nullable();

/** A scenario however half done; only its size and its title are checked. */
export const looseDocumentSchema = z.looseObject({ title: z.string().max(200) });

export const saveDraftSchema = z.strictObject({ seenAt, document: looseDocumentSchema });

export const publishSchema = z.strictObject({ seenAt: z.iso.datetime({ offset: true }) });

export const previewInputSchema = z.strictObject({
  document: looseDocumentSchema,
  seed: z.string().min(1).max(64),
});

export const newScenarioSchema = z.strictObject({
  title: z
    .string()
    .trim()
    .min(3, "Write a title of at least 3 characters.")
    .max(120, "At most 120 characters."),
  vehicleId: z.string().min(1, "Choose a vehicle.").max(64),
  /** Scenario to start from; null starts from nothing. */
  copyOf: z.string().max(64).nullable(),
});
export type NewScenario = z.infer<typeof newScenarioSchema>;
