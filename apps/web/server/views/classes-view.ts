import "server-only";
import type { Database } from "@probeworthy/database";
import { type ClassesView, classesViewSchema } from "@/features/classes/classes-view";
import type { SessionUser } from "../auth/session-user";

/** The classes a person teaches; an administrator sees every class. */
export async function loadClasses(database: Database, user: SessionUser): Promise<ClassesView> {
  const { organisationId, userId, role } = user;
  const classes = await database.classes.list({
    organisationId,
    ...(role === "administrator" ? {} : { instructorId: userId }),
  });
  return classesViewSchema.parse({
    classes: classes.map(({ id, title, term, learnerCount, assignmentCount }) => ({
      id,
      title,
      term,
      learners: learnerCount,
      assignments: assignmentCount,
    })),
  } satisfies ClassesView);
}
