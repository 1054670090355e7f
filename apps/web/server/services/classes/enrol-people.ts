import "server-only";
import { type Database, hashPassword } from "@probeworthy/database";
import type { EnrolAnswer, PersonLine } from "@/features/classes/class-input";
import { makeFirstPassword } from "../first-password";

interface EnrolPeople {
  readonly organisationId: string;
  readonly classId: string;
  readonly people: readonly PersonLine[];
}

/**
 * Puts people on a class list by address. Who has no account gets one with a first password that is answered once.
 * Each line succeeds or fails for itself.
 */
export async function enrolPeople(
  database: Database,
  { organisationId, classId, people }: EnrolPeople,
): Promise<EnrolAnswer> {
  const members = await database.users.list({ organisationId });
  const byEmail = new Map(members.map((member) => [member.email, member]));
  const roster = (await database.classes.roster({ organisationId, classId })) ?? [];
  const enrolled = new Set(roster.map(({ userId }) => userId));
  const answers: EnrolAnswer["people"] = [];
  for (const person of people) {
    const known = byEmail.get(person.email);
    if (known !== undefined && known.role !== "learner") {
      const message = "Has an account here that is not a learner's, so it cannot be on a class list.";
      answers.push({ ...person, name: known.name, outcome: "refused", message });
      continue;
    }
    if (known !== undefined && enrolled.has(known.id)) {
      answers.push({ ...person, name: known.name, outcome: "already_enrolled" });
      continue;
    }
    const made = known === undefined ? await makeAccount(database, organisationId, person) : undefined;
    const learner = known ?? made?.learner;
    if (learner === undefined) {
      const message = "This address cannot be added here. Ask an administrator to invite it.";
      answers.push({ ...person, outcome: "refused", message });
      continue;
    }
    const done = await database.classes.enrol({ organisationId, classId, userIds: [learner.id] });
    if (!done.ok) throw new Error(`a member could not be enrolled: ${done.error.code}`);
    enrolled.add(learner.id);
    byEmail.set(learner.email, learner);
    answers.push(
      made === undefined
        ? { ...person, name: learner.name, outcome: "enrolled" }
        : { ...person, name: learner.name, outcome: "account_made", password: made.password },
    );
  }
  return { people: answers };
}

async function makeAccount(database: Database, organisationId: string, { email, name }: PersonLine) {
  const password = makeFirstPassword();
  const created = await database.users.create({
    organisationId,
    email,
    // Without a name the address stands for the person until they are renamed.
    name: name === "" ? (email.split("@")[0] ?? email) : name,
    role: "learner",
    passwordHash: await hashPassword(password),
  });
  // An address known elsewhere is not said to be so: that would tell about another organisation.
  return created.ok ? { learner: created.value, password } : undefined;
}
