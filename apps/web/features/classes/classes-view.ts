import { z } from "zod";

export const classesViewSchema = z.strictObject({
  classes: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      term: z.string(),
      learners: z.number().int(),
      assignments: z.number().int(),
    }),
  ),
});
export type ClassesView = z.infer<typeof classesViewSchema>;
