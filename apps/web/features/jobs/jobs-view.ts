import { z } from "zod";

/** What a learner's list says of one piece of work: nothing of the scenario behind it. */
export const jobSchema = z.strictObject({
  assignmentId: z.string(),
  title: z.string(),
  classTitle: z.string().nullable(),
  mode: z.enum(["practice", "test", "check"]),
  state: z.enum(["startable", "under_way", "not_open_yet", "finished", "closed"]),
  opensAt: z.string().nullable(),
  closesAt: z.string().nullable(),
  attempts: z.number().int(),
  attemptLimit: z.number().int().nullable(),
  openAttemptId: z.string().nullable(),
  /** The last attempt handed in. */
  handedInAttemptId: z.string().nullable(),
  /** Absent while the assignment keeps results back. */
  score: z
    .strictObject({ score: z.number(), maximum: z.number(), passed: z.boolean(), final: z.boolean() })
    .nullable(),
});
export type Job = z.infer<typeof jobSchema>;
export const jobsViewSchema = z.strictObject({ jobs: z.array(jobSchema) });
