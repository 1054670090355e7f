import { z } from "zod";
import { rubricLines } from "./scenario";

/** One thing that earned or lost points, with the log lines it rests on. */
export const reasonSchema = z.strictObject({
  text: z.string(),
  /** Signed share of the line, −1 … 1. */
  effect: z.number(),
  lines: z.array(z.number().int()),
});

export const gradeLineSchema = z.strictObject({
  line: z.enum(rubricLines),
  title: z.string(),
  weight: z.number(),
  /** 0 … 1 of this line. */
  share: z.number().min(0).max(1),
  points: z.number(),
  maximum: z.number(),
  reasons: z.array(reasonSchema),
  /** A person must still score part of it (free text). */
  awaitsPerson: z.boolean(),
});

/** After each observation: which candidate causes the readings still allow. */
export const evidenceStepSchema = z.strictObject({
  line: z.number().int(),
  standing: z.array(z.string()), // ids of repair groups not yet ruled out
  ruledOut: z.array(z.string()),
});

export const gradeResultSchema = z.strictObject({
  engineVersion: z.string(),
  score: z.number(), // 0 … 100, one decimal
  passed: z.boolean(),
  passMark: z.number(),
  lines: z.array(gradeLineSchema),
  evidence: z.strictObject({
    /** Every candidate cause that was weighed, in plain words. */
    candidates: z.array(z.strictObject({ id: z.string(), title: z.string() })),
    steps: z.array(evidenceStepSchema),
    /** Id of the true repair group: may be shown only after submission. */
    truth: z.string(),
    named: z.string().nullable(),
    proven: z.boolean(),
  }),
  truth: z.array(z.strictObject({ title: z.string(), correction: z.string() })),
});
export type GradeResult = z.infer<typeof gradeResultSchema>;
