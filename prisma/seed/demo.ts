import { type Database, hashPassword } from "@probeworthy/database";
import { demoAssignments } from "./assignments";
import type { StarterContent } from "./content";
import { college, type DemoOrganisation, demoPasswords, repairShop } from "./people";
import { type PublishedScenario, publishStarterContent } from "./starter-content";
import { demoState, seededAction } from "./state";

const className = "Vehicle Systems 2B";

/**
 * A college with a class and work for it, and a repair shop. Safe to run again: what is there stays, what is
 * missing is added, and newer starter content becomes a new version. No attempt and no grade is made up.
 */
export async function seedDemo(database: Database, content: StarterContent, now: Date): Promise<void> {
  const shopId = await ensureOrganisation(database, repairShop);
  await publishStarterContent(database, shopId, content);

  const collegeId = await ensureOrganisation(database, college);
  const scenarios = await publishStarterContent(database, collegeId, content);
  const people = await database.users.list({ organisationId: collegeId });
  const instructor = people.find(({ role }) => role === "instructor");
  if (instructor === undefined) throw new Error("the demo college has no instructor");
  const classId = await ensureClass(database, collegeId, instructor.id);
  const enrolled = await database.classes.enrol({
    organisationId: collegeId,
    classId,
    userIds: people.filter(({ role }) => role === "learner").map(({ id }) => id),
  });
  if (!enrolled.ok) throw new Error(`the demo class could not be filled: ${enrolled.error.code}`);
  await ensureAssignments(database, {
    organisationId: collegeId,
    classId,
    createdById: instructor.id,
    scenarios,
    now,
  });

  if ((await demoState(database)) === "unfinished") {
    await database.audit.append({
      organisationId: collegeId,
      actorId: null,
      action: seededAction,
      resourceType: "organisation",
      resourceId: collegeId,
      detail: {},
      at: now,
    });
  }
}

async function ensureOrganisation(database: Database, { name, people }: DemoOrganisation): Promise<string> {
  const known = (await database.organisations.listAll()).find((one) => one.name === name);
  const organisationId = known?.id ?? (await database.organisations.create({ name })).id;
  const present = new Set((await database.users.list({ organisationId })).map(({ email }) => email));
  const missing = people.filter(({ email }) => !present.has(email));
  const hashes = await Promise.all(missing.map(({ role }) => hashPassword(demoPasswords[role])));
  for (const [index, person] of missing.entries()) {
    const passwordHash = hashes[index] ?? null;
    const created = await database.users.create({ organisationId, passwordHash, ...person });
    if (!created.ok) throw new Error(`${person.email} belongs to another organisation already`);
  }
  return organisationId;
}

async function ensureClass(
  database: Database,
  organisationId: string,
  instructorId: string,
): Promise<string> {
  const known = (await database.classes.list({ organisationId })).find(({ title }) => title === className);
  if (known !== undefined) return known.id;
  const created = await database.classes.create({
    organisationId,
    title: className,
    term: "Spring",
    instructorIds: [instructorId],
  });
  if (!created.ok) throw new Error(`the demo class could not be made: ${created.error.code}`);
  return created.value.id;
}

interface Handout {
  organisationId: string;
  classId: string;
  createdById: string;
  scenarios: Map<string, PublishedScenario>;
  now: Date;
}

async function ensureAssignments(database: Database, handout: Handout): Promise<void> {
  const { organisationId, classId, createdById, scenarios, now } = handout;
  const present = await database.assignments.listForClass({ organisationId, classId });
  for (const { scenario, title, ...terms } of demoAssignments(now)) {
    if (present.some((one) => one.title === title)) continue;
    const version = scenarios.get(scenario);
    if (version === undefined) throw new Error(`the starter scenarios have no "${scenario}"`);
    const created = await database.assignments.create({
      organisationId,
      for: { classId },
      createdById,
      title,
      ...version,
      ...terms,
    });
    if (!created.ok) throw new Error(`the assignment "${title}" could not be made: ${created.error.code}`);
  }
}
