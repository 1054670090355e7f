import { weightsSchema } from "@probeworthy/evaluation";
import { z } from "zod";

/** What the form for handing out work needs: the published scenarios with their usual weights and pass mark. */
export const assignmentOptionsSchema = z.strictObject({
  classId: z.string(),
  classTitle: z.string(),
  scenarios: z.array(
    z.strictObject({
      scenarioId: z.string(),
      versionId: z.string(),
      title: z.string(),
      number: z.number().int(),
      level: z.enum(["starter", "intermediate", "advanced"]),
      goal: z.string(),
      shopMinutes: z.number(),
      weights: weightsSchema,
      passMark: z.number(),
    }),
  ),
});
export type AssignmentOptions = z.infer<typeof assignmentOptionsSchema>;
export type ScenarioOption = AssignmentOptions["scenarios"][number];
