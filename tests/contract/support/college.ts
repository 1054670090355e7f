import { randomUUID } from "node:crypto";
import type { AssignmentTerms, Database, Role } from "@probeworthy/database";
import { starterScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import { makePerson, must, someMoment } from "../../support/factories";

const [first] = starterScenarios;
if (first === undefined) throw new Error("the starter scenarios are empty");
const scenario = first;

/** One organisation with somebody of every role and one thing of every kind. */
export async function makeCollege(database: Database) {
  const { id: organisationId } = await database.organisations.create({ name: "A college" });
  const person = async (role: Role) => (await makePerson(database, organisationId, role)).id;
  const people = {
    learner: await person("learner"),
    instructor: await person("instructor"),
    colleague: await person("instructor"),
    manager: await person("manager"),
    administrator: await person("administrator"),
  };
  const vehicle = must(
    await database.vehicles.create({
      organisationId,
      key: trainingVehicle.id,
      name: trainingVehicle.title,
      document: trainingVehicle,
      createdById: null,
    }),
  );
  const made = must(
    await database.scenarios.create({
      organisationId,
      key: scenario.id,
      title: scenario.title,
      vehicleId: vehicle.id,
      draft: null,
      createdById: null,
    }),
  );
  const version = must(
    await database.scenarios.publish({
      organisationId,
      scenarioId: made.id,
      vehicleVersionId: vehicle.versionId,
      document: scenario,
      createdById: null,
    }),
  );
  const terms: AssignmentTerms = {
    title: "A job",
    scenarioVersionId: version.id,
    mode: "practice",
    opensAt: null,
    closesAt: null,
    attemptLimit: null,
    weights: scenario.weights,
    passMark: scenario.passMark,
    reveal: "after_submission",
  };
  const college = { organisationId, people, vehicle, scenarioId: made.id, versionId: version.id, terms };
  return { ...college, classId: await makeClass(database, college) };
}

export type College = Awaited<ReturnType<typeof makeCollege>>;

/** Taught by the instructor, with the learner on the list. */
export async function makeClass(
  database: Database,
  { organisationId, people }: { organisationId: string; people: { instructor: string; learner: string } },
): Promise<string> {
  const created = must(
    await database.classes.create({
      organisationId,
      title: "A class",
      term: "Spring",
      instructorIds: [people.instructor],
    }),
  );
  must(await database.classes.enrol({ organisationId, classId: created.id, userIds: [people.learner] }));
  return created.id;
}

export async function makeAssignment(database: Database, college: College): Promise<string> {
  const { organisationId, people, terms, classId } = college;
  const created = await database.assignments.create({
    organisationId,
    createdById: people.instructor,
    for: { classId },
    ...terms,
  });
  return must(created).id;
}

/** Handed in and graded; of the class, or of a candidate. */
export async function makeGradedAttempt(
  database: Database,
  college: College,
  of: "class" | "candidate" = "class",
): Promise<string> {
  const { organisationId, people, terms } = college;
  const assignmentId =
    of === "class"
      ? await makeAssignment(database, college)
      : must(
          await database.assignments.create({
            organisationId,
            createdById: people.manager,
            for: { candidateId: people.learner },
            ...terms,
          }),
        ).id;
  const { id: attemptId } = must(
    await database.attempts.start({
      organisationId,
      assignmentId,
      learnerId: people.learner,
      scenarioVersionId: terms.scenarioVersionId,
      variantSeed: "a seed",
      variant: {},
      engineVersion: "1",
      now: someMoment,
    }),
  );
  must(
    await database.attempts.appendEvent({
      organisationId,
      attemptId,
      learnerId: people.learner,
      expectedSequence: 0,
      command: {},
      observation: {},
      cost: null,
      elapsedSeconds: 0,
      world: {},
      recordedAt: someMoment,
      closeAs: "submitted",
    }),
  );
  must(
    await database.grades.append({
      organisationId,
      attemptId,
      rubric: {},
      score: 50,
      maximum: 100,
      status: "final",
      engineVersion: "1",
      createdAt: someMoment,
    }),
  );
  return attemptId;
}

export async function makeInvitation(database: Database, { organisationId, people, terms }: College) {
  const invited = await database.invitations.create({
    organisationId,
    createdById: people.manager,
    email: `candidate-${randomUUID()}@test.example`,
    name: "A candidate",
    role: "learner",
    assignment: terms,
    expiresAt: new Date("2099-01-01T00:00:00Z"),
  });
  return must(invited).id;
}

export async function makeScenario(
  database: Database,
  { organisationId, vehicle }: College,
  withDraft: boolean,
) {
  const key = `scenario-${randomUUID()}`;
  const created = await database.scenarios.create({
    organisationId,
    key,
    title: "A scenario",
    vehicleId: vehicle.id,
    draft: withDraft ? { ...scenario, id: key } : null,
    createdById: null,
  });
  const scenarioId = must(created).id;
  const found = await database.scenarios.find({ organisationId, scenarioId });
  if (found === null) throw new Error("a scenario made just now is missing");
  return { scenarioId, seenAt: found.updatedAt.toISOString() };
}

/** One of the college's own, as a draft without a version. */
export async function makeOwnVehicle(database: Database, { organisationId }: College) {
  const key = `own-${randomUUID()}`;
  const savedAt = new Date("2026-03-02T08:00:00Z");
  const draft = { ...trainingVehicle, id: key, title: "The college's car" };
  const created = await database.vehicles.createDraft({
    organisationId,
    key,
    name: draft.title,
    draft,
    savedAt,
  });
  return { vehicleId: must(created).id, seenAt: savedAt.toISOString(), draft };
}

export async function makeChart(database: Database, { organisationId, people, vehicle }: College) {
  const stored = await database.charts.create({
    organisationId,
    vehicleVersionId: vehicle.versionId,
    name: "A chart",
    csv: "terminal",
    result: { rows: [] },
    createdById: people.instructor,
  });
  return must(stored).id;
}
