import { weightsSchema } from "@probeworthy/evaluation";
import { z } from "zod";

/** A moment as ISO 8601 with zone; the browser turns its own wall clock into it. */
const moment = z.iso.datetime({ offset: true });

export const assignmentModes = ["practice", "test", "check"] as const;
export const revealPolicies = ["after_submission", "after_close", "never"] as const;

/** The terms under which a scenario version is handed to a class. */
export const assignmentInputSchema = z
  .strictObject({
    scenarioVersionId: z.string("Choose a scenario.").min(1, "Choose a scenario.").max(64),
    title: z
      .string()
      .trim()
      .min(3, "Write what the learner reads on the job list, at least 3 characters.")
      .max(160, "At most 160 characters."),
    mode: z.enum(assignmentModes),
    opensAt: moment.nullable(),
    closesAt: moment.nullable(),
    attemptLimit: z
      .number("Write a whole number, or leave it empty.")
      .int("Write a whole number, or leave it empty.")
      .min(1, "At least 1, or leave it empty.")
      .max(100, "At most 100, or leave it empty.")
      .nullable(),
    passMark: z
      .number("Write a percentage from 0 to 100.")
      .min(0, "Write a percentage from 0 to 100.")
      .max(100, "Write a percentage from 0 to 100."),
    weights: weightsSchema,
    reveal: z.enum(revealPolicies),
  })
  .refine(
    ({ opensAt, closesAt }) =>
      opensAt === null || closesAt === null || Date.parse(opensAt) < Date.parse(closesAt),
    { path: ["closesAt"], message: "It must close after it opens." },
  )
  .refine(({ reveal, closesAt }) => reveal !== "after_close" || closesAt !== null, {
    path: ["closesAt"],
    message: "Results come out when it closes, so it needs a closing time.",
  });
export type AssignmentInput = z.infer<typeof assignmentInputSchema>;
