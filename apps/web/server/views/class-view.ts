import "server-only";
import type { ClassSummary, Database } from "@probeworthy/database";
import type { AttemptPolicy } from "@probeworthy/gradebook";
import { type ClassView, classViewSchema } from "@/features/classes/class-view";
import { toGradebookView } from "./gradebook-view";

/** Gradebook, roster and handed-out work of a class the caller may see. */
export async function loadClass(
  database: Database,
  organisationId: string,
  { id, title, term }: ClassSummary,
  policy: AttemptPolicy,
  now: Date,
): Promise<ClassView | undefined> {
  const ref = { organisationId, classId: id };
  const [book, roster, assignments] = await Promise.all([
    database.grades.gradebook(ref),
    database.classes.roster(ref),
    database.assignments.listForClass(ref),
  ]);
  if (book === null || roster === null) return undefined;
  return classViewSchema.parse({
    id,
    title,
    term,
    gradebook: toGradebookView(book, policy, now),
    roster: roster.map(({ userId, name, email, begunCount, submittedCount, lastStartedAt }) => ({
      userId,
      name,
      email,
      begun: begunCount,
      handedIn: submittedCount,
      lastStartedAt: lastStartedAt?.toISOString() ?? null,
    })),
    assignments: assignments.map((one) => ({
      id: one.id,
      title: one.title,
      scenarioTitle: one.scenarioTitle,
      mode: one.mode,
      opensAt: one.opensAt?.toISOString() ?? null,
      closesAt: one.closesAt?.toISOString() ?? null,
      attemptLimit: one.attemptLimit,
      passMark: one.passMark,
      reveal: one.reveal,
      attempts: one.attemptCount,
      handedIn: one.submittedCount,
    })),
  } satisfies ClassView);
}
