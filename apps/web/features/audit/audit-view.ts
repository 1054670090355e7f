import { z } from "zod";

/** Kinds of things an entry can be about. */
export const auditedTypes = [
  "organisation",
  "person",
  "class",
  "assignment",
  "scenario",
  "vehicle",
  "attempt",
  "invitation",
] as const;

export const auditViewSchema = z.strictObject({
  entries: z.array(
    z.strictObject({
      id: z.string(),
      at: z.string(),
      actorName: z.string().nullable(),
      action: z.string(),
      resourceType: z.string(),
      resourceId: z.string().nullable(),
      detail: z.string(),
    }),
  ),
  people: z.array(z.strictObject({ id: z.string(), name: z.string() })),
  /** Id to ask on from; null when these are the oldest. */
  nextBefore: z.string().nullable(),
});
export type AuditView = z.infer<typeof auditViewSchema>;
