import "server-only";
import type { Database } from "@probeworthy/database";
import { type PeopleView, peopleViewSchema } from "@/features/people/people-view";
import type { SessionUser } from "../auth/session-user";

export async function loadPeople(database: Database, user: SessionUser): Promise<PeopleView> {
  const people = await database.users.list({ organisationId: user.organisationId });
  return peopleViewSchema.parse({
    people: people.map(({ id, name, email, role, disabledAt, createdAt }) => ({
      id,
      name,
      email,
      role,
      disabledAt: disabledAt?.toISOString() ?? null,
      createdAt: createdAt.toISOString(),
      isSelf: id === user.userId,
    })),
  } satisfies PeopleView);
}
