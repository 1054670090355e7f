import { z } from "zod";

export const candidateInputSchema = z.strictObject({
  name: z.string().trim().min(2, "Write the candidate's name.").max(120, "At most 120 characters."),
  email: z.email("Write an e-mail address.").max(320),
  scenarioVersionId: z.string().min(1, "Choose a check.").max(64),
  title: z
    .string()
    .trim()
    .min(3, "Write what the candidate reads, at least 3 characters.")
    .max(160, "At most 160 characters."),
  passMark: z
    .number("Write a percentage from 0 to 100.")
    .min(0, "Write a percentage from 0 to 100.")
    .max(100, "Write a percentage from 0 to 100."),
  days: z
    .number("Write a number of days from 1 to 60.")
    .int("Write whole days.")
    .min(1, "At least 1 day.")
    .max(60, "At most 60 days."),
  reveal: z.enum(["after_submission", "never"]),
});
export type CandidateInput = z.infer<typeof candidateInputSchema>;

/** The link is answered once; nobody can read it again. */
export const invitedSchema = z.strictObject({ id: z.string(), path: z.string() });
