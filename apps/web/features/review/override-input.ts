import { z } from "zod";

export const overrideInputSchema = z.strictObject({
  score: z
    .number("Write a number from 0 to 100.")
    .min(0, "Write a number from 0 to 100.")
    .max(100, "Write a number from 0 to 100.")
    .nullable(),
  reason: z
    .string()
    .trim()
    .min(10, "Say why in at least 10 characters. The learner reads it.")
    .max(2000, "At most 2000 characters."),
});
export type OverrideInput = z.infer<typeof overrideInputSchema>;
