import { gradeResultSchema, learnerViewSchema } from "@probeworthy/evaluation";
import { z } from "zod";

/** What only staff may see of an attempt: the true fault, the seed and what the record noted behind the scenes. */
const secretSideSchema = z.strictObject({
  candidate: z.string(),
  normal: z.boolean(),
  faults: z.array(z.string()),
  conditions: z.array(z.string()),
  seed: z.string(),
  scenarioTitle: z.string(),
  scenarioVersion: z.number().int(),
  engineVersion: z.string(),
  instructorNote: z.string(),
  remarks: z.array(z.strictObject({ line: z.number().int(), text: z.string() })),
});

const shownGradeSchema = gradeResultSchema
  .pick({ passMark: true, lines: true, evidence: true, truth: true })
  .extend({
    score: z.number(),
    computedScore: z.number(),
    passed: z.boolean(),
    awaitsPerson: z.boolean(),
  })
  .strict();

/** A reviewed attempt, for instructors, managers and administrators. Strict: an extra key is an error. */
export const reviewViewSchema = z.strictObject({
  attemptId: z.string(),
  learnerName: z.string(),
  number: z.number().int(),
  title: z.string(),
  mode: z.enum(["practice", "test", "check"]),
  classId: z.string().nullable(),
  status: z.enum(["open", "submitted", "graded", "abandoned"]),
  startedAt: z.string(),
  submittedAt: z.string().nullable(),
  work: learnerViewSchema,
  grade: shownGradeSchema.nullable(),
  revisions: z.array(
    z.strictObject({
      revision: z.number().int(),
      score: z.number(),
      engineVersion: z.string(),
      createdAt: z.string(),
    }),
  ),
  decisions: z.array(
    z.strictObject({
      id: z.string(),
      byName: z.string(),
      reason: z.string(),
      score: z.number().nullable(),
      createdAt: z.string(),
    }),
  ),
  secret: secretSideSchema,
});
export type ReviewView = z.infer<typeof reviewViewSchema>;
export type ReviewedGrade = NonNullable<ReviewView["grade"]>;
