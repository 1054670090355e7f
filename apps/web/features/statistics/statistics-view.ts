import { z } from "zod";

/** A figure with its 95 % interval, or the sentence that says why there is none. */
const measuredSchema = z.discriminatedUnion("known", [
  z.strictObject({ known: z.literal(true), value: z.number(), low: z.number(), high: z.number() }),
  z.strictObject({ known: z.literal(false), why: z.string() }),
]);
export type Measured = z.infer<typeof measuredSchema>;

export const statisticsViewSchema = z.strictObject({
  classId: z.string(),
  title: z.string(),
  term: z.string(),
  /** First attempts that were handed in. */
  attempts: z.number().int(),
  withoutReport: z.number().int(),
  items: z.array(
    z.strictObject({
      assignmentId: z.string(),
      title: z.string(),
      /** Share of right causes, 0 … 1. */
      difficulty: measuredSchema,
      /** Of how many attempts; null when the share is not known. */
      attempts: z.number().int().nullable(),
      /** Correlation with the other assignments, −1 … 1. */
      discrimination: measuredSchema,
    }),
  ),
  reliability: z.strictObject({
    alpha: measuredSchema,
    /** In assignments out of all; null when alpha is not known. */
    scale: z
      .strictObject({
        items: z.number().int(),
        mean: z.number(),
        standardDeviation: z.number(),
        standardError: z.number(),
      })
      .nullable(),
    /** Assignments looked at together, learners who handed in all of them, learners who did not. */
    jointItems: z.number().int(),
    complete: z.number().int(),
    incomplete: z.number().int(),
  }),
  confusion: z.strictObject({
    kinds: z.array(z.string()),
    rows: z.array(
      z.strictObject({
        kind: z.string(),
        counts: z.array(z.number().int()),
        attempts: z.number().int(),
        right: measuredSchema,
        takenFor: z.string().nullable(),
      }),
    ),
    attempts: z.number().int(),
    severalFaults: z.number().int(),
    severalNamed: z.number().int(),
  }),
});
export type StatisticsView = z.infer<typeof statisticsViewSchema>;
