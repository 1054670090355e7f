import { z } from "zod";

/** Characters; a chart of a whole vehicle has some tens of thousands. */
export const chartTextLimit = 200_000;

export const chartInputSchema = z.strictObject({
  name: z
    .string()
    .trim()
    .min(2, "Say what this chart is, for example the manual and the page.")
    .max(120, "At most 120 characters."),
  csv: z
    .string()
    .min(1, "Choose a file or paste the chart.")
    .max(chartTextLimit, `At most ${chartTextLimit} characters.`),
});
export type ChartInput = z.infer<typeof chartInputSchema>;
