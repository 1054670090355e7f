import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { backends, type TestDatabase } from "../support/databases";
import { makePerson, makeSchool, must, type School, someMoment, someTerms } from "../support/factories";

describe.each(backends)("organisations on $name", ({ open }) => {
  let test: TestDatabase;
  let mine: School;
  let theirs: School;
  beforeAll(async () => {
    test = await open();
    mine = await makeSchool(test.database);
    theirs = await makeSchool(test.database);
  });
  afterAll(() => test.close());

  it("a foreign id answers like an unknown one, everywhere", async () => {
    const { users, memberships, classes, vehicles, charts, scenarios, assignments } = test.database;
    const { organisationId, instructorId: createdById } = mine;
    const chart = must(
      await charts.create({
        organisationId: theirs.organisationId,
        vehicleVersionId: theirs.vehicleVersionId,
        name: "chart",
        csv: "",
        result: [],
        createdById: theirs.instructorId,
      }),
    );
    const ask = async (ids: School, chartId: string) => [
      await users.find({ organisationId, userId: ids.learnerId }),
      await memberships.roleOf({ organisationId, userId: ids.learnerId }),
      await memberships.setRole({ organisationId, userId: ids.learnerId, role: "administrator" }),
      await memberships.setDisabled({ organisationId, userId: ids.learnerId, disabledAt: someMoment }),
      await memberships.resetPassword({ organisationId, userId: ids.learnerId, passwordHash: "mine now" }),
      await classes.find({ organisationId, classId: ids.classId }),
      await classes.roster({ organisationId, classId: ids.classId }),
      await classes.isInstructor({ organisationId, classId: ids.classId, userId: ids.instructorId }),
      await classes.enrol({ organisationId, classId: ids.classId, userIds: [mine.learnerId] }),
      await classes.remove({ organisationId, classId: ids.classId, userId: ids.learnerId }),
      await classes.archive({ organisationId, classId: ids.classId, archivedAt: someMoment }),
      await vehicles.latestVersion({ organisationId, vehicleId: ids.vehicleId }),
      await vehicles.version({ organisationId, versionId: ids.vehicleVersionId }),
      await vehicles.createVersion({ organisationId, vehicleId: ids.vehicleId, document: {}, createdById }),
      await charts.find({ organisationId, chartId }),
      await scenarios.find({ organisationId, scenarioId: ids.scenarioId }),
      await scenarios.latestVersion({ organisationId, scenarioId: ids.scenarioId }),
      await scenarios.version({ organisationId, versionId: ids.scenarioVersionId }),
      await scenarios.saveDraft({ organisationId, scenarioId: ids.scenarioId, title: "x", draft: {} }),
      await scenarios.archive({ organisationId, scenarioId: ids.scenarioId, archivedAt: someMoment }),
      await scenarios.publish({
        organisationId,
        scenarioId: ids.scenarioId,
        vehicleVersionId: ids.vehicleVersionId,
        document: {},
        createdById,
      }),
      await assignments.get({ organisationId, assignmentId: ids.assignmentId }),
      await assignments.getForLearner({
        organisationId,
        assignmentId: ids.assignmentId,
        learnerId: ids.learnerId,
      }),
      await assignments.archive({ organisationId, assignmentId: ids.assignmentId, archivedAt: someMoment }),
      await assignments.listForClass({ organisationId, classId: ids.classId }),
      await assignments.create({
        organisationId,
        for: { classId: mine.classId },
        createdById,
        ...someTerms,
        scenarioVersionId: ids.scenarioVersionId,
      }),
    ];
    const unknown = Object.fromEntries(Object.keys(mine).map((key) => [key, "no-such-id"])) as School;
    expect(await ask(theirs, chart.id)).toEqual(await ask(unknown, "no-such-id"));
    const untouched = await users.findByEmailForSignIn((await users.findAccount(theirs.learnerId))!.email);
    expect(untouched).toMatchObject({ passwordHash: "a hash", disabledAt: null });
  });

  it("keep at least one administrator who can sign in", async () => {
    const { memberships } = test.database;
    const { organisationId } = mine;
    const first = await makePerson(test.database, organisationId, "administrator");
    const last = { ok: false, error: { code: "last_administrator" } };
    expect(await memberships.setRole({ organisationId, userId: first.id, role: "learner" })).toEqual(last);
    expect(
      await memberships.setDisabled({ organisationId, userId: first.id, disabledAt: someMoment }),
    ).toEqual(last);
    const second = await makePerson(test.database, organisationId, "administrator");
    const both = await Promise.all(
      [first, second].map(({ id }) => memberships.setRole({ organisationId, userId: id, role: "learner" })),
    );
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(both.filter(({ ok }) => !ok)).toEqual([last]);
  });

  it("number versions in order, and write no version for content that did not change", async () => {
    const { vehicles, scenarios } = test.database;
    const { organisationId, vehicleId, scenarioId, vehicleVersionId } = mine;
    const save = (document: unknown) =>
      vehicles.createVersion({ organisationId, vehicleId, document, createdById: null });
    const documents = [1, 2, 3, 4].map((revision) => ({ id: "vehicle", revision }));
    const saved = await Promise.all(documents.map(save));
    expect(saved.map((result) => must(result).number).sort()).toEqual([2, 3, 4, 5]);
    const latest = (await vehicles.latestVersion({ organisationId, vehicleId }))!;
    expect(latest.number).toBe(5);
    // Keys in another order are the same document.
    const { id, revision } = latest.document as { id: string; revision: number };
    expect(must(await save({ revision, id }))).toEqual({ id: latest.id, number: 5, isNew: false });

    const published = must(
      await scenarios.publish({
        organisationId,
        scenarioId,
        vehicleVersionId: latest.id,
        document: { id: "scenario", pool: ["the fault"] },
        createdById: null,
      }),
    );
    expect(published).toMatchObject({ number: 2, isNew: true });
    expect(vehicleVersionId).not.toBe(latest.id);
  });
});
