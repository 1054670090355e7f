import { gradeResultSchema, learnerViewSchema } from "@probeworthy/evaluation";
import { z } from "zod";

const heading = {
  attemptNumber: z.number().int(),
  submittedAt: z.string(),
};

/** The grade as its owner may see it: an allow-list of the graded result, without engine or weighing details. */
const shownGradeSchema = gradeResultSchema
  .pick({ score: true, passed: true, passMark: true, lines: true, evidence: true, truth: true })
  .extend({
    awaitsPerson: z.boolean(),
    /** A person's decision about the score, with the reason they gave. */
    decision: z.strictObject({ by: z.string(), reason: z.string(), computedScore: z.number() }).nullable(),
  })
  .strict();
export type ShownGrade = z.infer<typeof shownGradeSchema>;

/**
 * What the owner of a handed-in attempt sees. Until the assignment lets results out there is nothing in it but what
 * the learner did. Strict: an extra key is an error, not a leak.
 */
export const resultViewSchema = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("kept_back"),
    ...heading,
    /** When results come out; null when they are not given out here. */
    revealsAt: z.string().nullable(),
    work: learnerViewSchema,
  }),
  z.strictObject({
    kind: z.literal("being_graded"),
    ...heading,
    /** How much of the grade is worked out, 0 … 1. */
    progress: z.number().min(0).max(1),
    work: learnerViewSchema,
  }),
  z.strictObject({
    kind: z.literal("shown"),
    ...heading,
    work: learnerViewSchema,
    grade: shownGradeSchema,
    cautions: z.array(z.string()),
  }),
]);
export type ResultView = z.infer<typeof resultViewSchema>;
export type ShownResult = Extract<ResultView, { kind: "shown" }>;
