import "server-only";
import type { Attempt, ClassSummary, Database } from "@probeworthy/database";
import type { SessionUser } from "../auth/session-user";

type Person = Pick<SessionUser, "userId" | "organisationId" | "role">;

/** A class this person may work with: an instructor's own, any of the organisation for an administrator. */
export async function findTaughtClass(
  database: Database,
  { userId, organisationId, role }: Person,
  classId: string,
): Promise<ClassSummary | undefined> {
  const ref = { organisationId, classId };
  const found = await database.classes.find(ref);
  if (found === null) return undefined;
  if (role === "administrator") return found;
  if (role !== "instructor") return undefined;
  return (await database.classes.isInstructor({ ...ref, userId })) ? found : undefined;
}

/**
 * An attempt this person may review: of a class they teach, or of a candidate for who invites candidates. Everything
 * else answers like an unknown id.
 */
export async function findReviewableAttempt(
  database: Database,
  person: Person,
  attemptId: string,
): Promise<Attempt | undefined> {
  const attempt = await database.attempts.getForStaff({ organisationId: person.organisationId, attemptId });
  if (attempt === null) return undefined;
  const { classId } = attempt.assignment;
  if (classId === null)
    return person.role === "manager" || person.role === "administrator" ? attempt : undefined;
  return (await findTaughtClass(database, person, classId)) === undefined ? undefined : attempt;
}
