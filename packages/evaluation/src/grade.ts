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

/** How likely a repair group is among all, 0 … 1. */
export const groupShareSchema = z.strictObject({ id: z.string(), share: z.number().min(0).max(1) });

/** After each observation: which candidate causes the readings still allow, and how likely each is. */
export const evidenceStepSchema = z.strictObject({
  line: z.number().int(),
  standing: z.array(z.string()), // ids of repair groups not yet ruled out
  ruledOut: z.array(z.string()),
  /** Fall of uncertainty at this line, bits; negative where a reading made it less clear. Absent in older grades. */
  bits: z.number().optional(),
  /** Entropy over repair groups after this line, bits. */
  uncertainty: z.number().nonnegative().optional(),
  /** Groups with a share of 0.005 or more, greatest first. */
  shares: z.array(groupShareSchema).optional(),
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
    /** Before the hand-over. This and what follows is absent in older grades. */
    prior: z.strictObject({ uncertainty: z.number(), shares: z.array(groupShareSchema) }).optional(),
    /** Groups no allowed test can tell from the truth. */
    equivalent: z.array(z.string()).optional(),
    /** Entries that no cause left explains: misread, or by a second cause. */
    contradictions: z.array(z.strictObject({ line: z.number().int(), text: z.string() })).optional(),
    /** Still standing at submission, with the test that would have told it from the truth, in plain words. */
    rivals: z
      .array(z.strictObject({ id: z.string(), title: z.string(), wouldRuleOut: z.string().nullable() }))
      .optional(),
    /** The reference strategy's way for this variant. */
    reference: z
      .strictObject({
        minutes: z.number(),
        readings: z.number().int(),
        steps: z.array(
          z.strictObject({
            text: z.string(),
            minutes: z.number(),
            bits: z.number(),
            uncertainty: z.number(),
          }),
        ),
      })
      .optional(),
  }),
  truth: z.array(z.strictObject({ title: z.string(), correction: z.string() })),
});
export type GradeResult = z.infer<typeof gradeResultSchema>;
