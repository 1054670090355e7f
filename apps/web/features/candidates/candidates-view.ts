import { z } from "zod";
import { assignmentOptionsSchema } from "../assignments/assignment-options-view";

export const candidateStates = [
  "waiting",
  "expired",
  "revoked",
  "used",
  "working",
  "awaiting",
  "graded",
] as const;

export const candidatesViewSchema = z.strictObject({
  candidates: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      email: z.string(),
      title: z.string(),
      /** `used`: the link was taken up, the car not yet touched. `awaiting`: handed in, no grade yet. */
      state: z.enum(candidateStates),
      invitedAt: z.string(),
      expiresAt: z.string(),
      score: z.number().nullable(),
      passed: z.boolean().nullable(),
      /** Worked out by the rules; no person has read the wording of the report. */
      unread: z.boolean(),
    }),
  ),
  checks: assignmentOptionsSchema.shape.scenarios,
});
export type CandidatesView = z.infer<typeof candidatesViewSchema>;
export type CandidateLine = CandidatesView["candidates"][number];

export const candidateStateWords: Readonly<Record<CandidateLine["state"], string>> = {
  waiting: "Link sent",
  expired: "Link ran out",
  revoked: "Withdrawn",
  used: "Link used",
  working: "At work",
  awaiting: "Handed in",
  graded: "Result",
};
