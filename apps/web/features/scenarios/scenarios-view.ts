import { z } from "zod";

export const scenariosViewSchema = z.strictObject({
  scenarios: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      /** Comes with the program, as opposed to one built here. */
      starter: z.boolean(),
      level: z.enum(["starter", "intermediate", "advanced"]).nullable(),
      systemTitle: z.string().nullable(),
      vehicleName: z.string(),
      candidates: z.number().int().nullable(),
      published: z.number().int().nullable(),
      hasDraft: z.boolean(),
      updatedAt: z.string(),
    }),
  ),
  vehicles: z.array(z.strictObject({ id: z.string(), name: z.string() })),
});
export type ScenariosView = z.infer<typeof scenariosViewSchema>;
export type ScenarioLine = ScenariosView["scenarios"][number];
