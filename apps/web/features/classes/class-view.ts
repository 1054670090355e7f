import { attemptPolicies } from "@probeworthy/gradebook";
import { z } from "zod";
import { assignmentModes, revealPolicies } from "../assignments/assignment-input";

const cellSchema = z.strictObject({
  assignmentId: z.string(),
  /** `missing`: closed and never handed in, counts as 0. `awaiting`: handed in, the grade is not there yet. */
  state: z.enum(["not_started", "open", "awaiting", "graded", "missing"]),
  percent: z.number().nullable(),
  passed: z.boolean().nullable(),
  overridden: z.boolean(),
  /** Worked out by the rules; no person has read the wording of the report. */
  unread: z.boolean(),
  attempts: z.number().int(),
  /** The attempt to review: the one that counts, else the latest; null when none was begun. */
  attemptId: z.string().nullable(),
});
export type GradebookCellView = z.infer<typeof cellSchema>;

export const gradebookViewSchema = z.strictObject({
  policy: z.enum(attemptPolicies),
  assignments: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      passMark: z.number(),
      closesAt: z.string().nullable(),
      mean: z.number().nullable(),
    }),
  ),
  rows: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      email: z.string(),
      cells: z.array(cellSchema),
      total: z.number().nullable(),
    }),
  ),
  totalMean: z.number().nullable(),
});
export type GradebookView = z.infer<typeof gradebookViewSchema>;

export const classViewSchema = z.strictObject({
  id: z.string(),
  title: z.string(),
  term: z.string(),
  gradebook: gradebookViewSchema,
  roster: z.array(
    z.strictObject({
      userId: z.string(),
      name: z.string(),
      email: z.string(),
      begun: z.number().int(),
      handedIn: z.number().int(),
      lastStartedAt: z.string().nullable(),
    }),
  ),
  assignments: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      scenarioTitle: z.string(),
      mode: z.enum(assignmentModes),
      opensAt: z.string().nullable(),
      closesAt: z.string().nullable(),
      attemptLimit: z.number().int().nullable(),
      passMark: z.number(),
      reveal: z.enum(revealPolicies),
      attempts: z.number().int(),
      handedIn: z.number().int(),
    }),
  ),
});
export type ClassView = z.infer<typeof classViewSchema>;
