import { randomUUID } from "node:crypto";
import type { AssignmentTerms, Database, Role } from "@probeworthy/database";

/** Rows a test needs but does not care about. Every call makes new ones. */

let counter = 0;
const next = (): number => ++counter;

export const someMoment = new Date("2026-03-02T08:00:00Z");

/** The value of a result that a test takes for granted. */
export function must<Value>(
  result: { ok: true; value: Value } | { ok: false; error: { code: string } },
): Value {
  if (!result.ok) throw new Error(`expected success, got ${result.error.code}`);
  return result.value;
}

export async function makePerson(database: Database, organisationId: string, role: Role) {
  const email = `person-${randomUUID()}@test.example`;
  return must(
    await database.users.create({
      organisationId,
      email,
      name: `Person ${next()}`,
      role,
      passwordHash: "a hash",
    }),
  );
}

export const someTerms: Omit<AssignmentTerms, "scenarioVersionId"> = {
  title: "Steering is heavy",
  mode: "practice",
  opensAt: null,
  closesAt: null,
  attemptLimit: null,
  weights: { cause: 1 },
  passMark: 70,
  reveal: "after_submission",
};

/** An organisation with an instructor, a learner in a class, a published scenario and work handed out. */
export async function makeSchool(database: Database, terms: Partial<AssignmentTerms> = {}) {
  const { id: organisationId } = await database.organisations.create({ name: `School ${next()}` });
  const instructor = await makePerson(database, organisationId, "instructor");
  const learner = await makePerson(database, organisationId, "learner");
  const created = await database.classes.create({
    organisationId,
    title: "Class",
    term: "Spring",
    instructorIds: [instructor.id],
  });
  const classId = must(created).id;
  must(await database.classes.enrol({ organisationId, classId, userIds: [learner.id] }));
  const vehicle = must(
    await database.vehicles.create({
      organisationId,
      key: "vehicle",
      name: "Vehicle",
      document: { id: "vehicle" },
      createdById: instructor.id,
    }),
  );
  const scenario = must(
    await database.scenarios.create({
      organisationId,
      key: "scenario",
      title: "Scenario",
      vehicleId: vehicle.id,
      draft: null,
      createdById: instructor.id,
    }),
  );
  const version = must(
    await database.scenarios.publish({
      organisationId,
      scenarioId: scenario.id,
      vehicleVersionId: vehicle.versionId,
      document: { id: "scenario", pool: ["the fault"] },
      createdById: instructor.id,
    }),
  );
  const assignment = must(
    await database.assignments.create({
      organisationId,
      for: { classId },
      createdById: instructor.id,
      ...someTerms,
      scenarioVersionId: version.id,
      ...terms,
    }),
  );
  return {
    organisationId,
    instructorId: instructor.id,
    learnerId: learner.id,
    classId,
    vehicleId: vehicle.id,
    vehicleVersionId: vehicle.versionId,
    scenarioId: scenario.id,
    scenarioVersionId: version.id,
    assignmentId: assignment.id,
  };
}

export type School = Awaited<ReturnType<typeof makeSchool>>;

export const startOf = (school: School) => ({
  organisationId: school.organisationId,
  assignmentId: school.assignmentId,
  learnerId: school.learnerId,
  scenarioVersionId: school.scenarioVersionId,
  variantSeed: "seed-of-the-variant",
  variant: { fault: "secret-fault" },
  engineVersion: "engine-1",
  now: someMoment,
});

export async function makeAttempt(database: Database, school: School): Promise<string> {
  return must(await database.attempts.start(startOf(school))).id;
}

export const eventOf = (school: School, attemptId: string, expectedSequence: number) => ({
  organisationId: school.organisationId,
  attemptId,
  learnerId: school.learnerId,
  expectedSequence,
  command: { type: "placeLead", at: expectedSequence },
  observation: { display: "12.60 V" },
  cost: { seconds: 30 },
  elapsedSeconds: 30 * (expectedSequence + 1),
  world: { motorCelsius: 41.5 },
  recordedAt: someMoment,
});
