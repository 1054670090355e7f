import { scenarioSchema } from "@probeworthy/evaluation";
import { z } from "zod";

/** A scenario as staff read it: it names the faults. */
export const scenarioViewSchema = z.strictObject({
  id: z.string(),
  title: z.string(),
  starter: z.boolean(),
  vehicleId: z.string(),
  vehicleName: z.string(),
  systemTitle: z.string().nullable(),
  hasDraft: z.boolean(),
  version: z.strictObject({ number: z.number().int(), publishedAt: z.string() }).nullable(),
  /** The published document; null while there is only a draft. */
  document: scenarioSchema.nullable(),
  pool: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      share: z.number(),
      normal: z.boolean(),
      faults: z.array(z.string()),
    }),
  ),
  startConditions: z.array(z.string()),
  /** Classes this person can hand it out to. */
  classes: z.array(z.strictObject({ id: z.string(), title: z.string() })),
});
export type ScenarioView = z.infer<typeof scenarioViewSchema>;
