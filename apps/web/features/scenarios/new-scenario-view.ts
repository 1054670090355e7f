import { z } from "zod";

export const newScenarioOptionsSchema = z.strictObject({
  vehicles: z.array(z.strictObject({ id: z.string(), name: z.string() })),
  scenarios: z.array(z.strictObject({ id: z.string(), title: z.string(), vehicleId: z.string() })),
});
export type NewScenarioOptions = z.infer<typeof newScenarioOptionsSchema>;
