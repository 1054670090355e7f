import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { backends, type TestDatabase } from "../support/databases";
import {
  eventOf,
  makeAttempt,
  makePerson,
  makeSchool,
  must,
  type School,
  someMoment,
} from "../support/factories";

describe.each(backends)("rows that never change on $name", ({ open }) => {
  let test: TestDatabase;
  let school: School;
  let attemptId: string;

  beforeAll(async () => {
    test = await open();
    const { database } = test;
    school = await makeSchool(database);
    attemptId = await makeAttempt(database, school);
    must(await database.attempts.appendEvent({ ...eventOf(school, attemptId, 0), closeAs: "submitted" }));
    const { organisationId, instructorId } = school;
    const grade = {
      rubric: [],
      score: 60,
      maximum: 100,
      status: "final" as const,
      engineVersion: "engine-1",
    };
    must(await database.grades.append({ organisationId, attemptId, ...grade, createdAt: someMoment }));
    const decision = { byId: instructorId, reason: "the report says more", score: 80, createdAt: someMoment };
    must(await database.grades.override({ organisationId, attemptId, ...decision }));
  });
  afterAll(() => test.close());

  const tables = [
    "AttemptEvent",
    "Grade",
    "GradeOverride",
    "AuditEntry",
    "VehicleVersion",
    "ScenarioVersion",
  ];
  const columns: Record<string, string> = {
    AttemptEvent: "elapsedSeconds",
    Grade: "score",
    GradeOverride: "score",
    AuditEntry: "action",
    VehicleVersion: "number",
    ScenarioVersion: "number",
  };

  it.each(tables)("%s refuses update, delete and truncate", async (table) => {
    const count = async () => (await test.sql(`SELECT count(*)::int AS "count" FROM "${table}"`))[0]?.count;
    const before = await count();
    expect(before).toBeGreaterThan(0);
    const column = columns[table];
    await expect(test.sql(`UPDATE "${table}" SET "${column}" = "${column}"`)).rejects.toThrow(
      /never changed/,
    );
    await expect(test.sql(`DELETE FROM "${table}"`)).rejects.toThrow(/never changed/);
    await expect(test.sql(`TRUNCATE "${table}" CASCADE`)).rejects.toThrow(/never changed/);
    expect(await count()).toBe(before);
  });

  it("an attempt keeps the variant it started with", async () => {
    const change = `UPDATE "Attempt" SET "variantSeed" = 'another' WHERE "id" = $1`;
    await expect(test.sql(change, [attemptId])).rejects.toThrow(/variant of an attempt never changes/);
    expect((await test.database.attempts.getSecrets({ ...school, attemptId }))?.variantSeed).toBe(
      "seed-of-the-variant",
    );
  });

  it("an address is stored in lower case only", async () => {
    const mixed = `UPDATE "User" SET "email" = 'Someone@Test.example' WHERE "id" = $1`;
    await expect(test.sql(mixed, [school.learnerId])).rejects.toThrow(/User_email_lower_case/);
  });

  it("erasing an organisation removes it and its people, and nothing of another", async () => {
    const { database } = test;
    const other = await makeSchool(database);
    const otherAttempt = await makeAttempt(database, other);
    must(await database.attempts.appendEvent(eventOf(other, otherAttempt, 0)));
    const doomed = await makeSchool(database);
    const doomedAttempt = await makeAttempt(database, doomed);
    must(await database.attempts.appendEvent(eventOf(doomed, doomedAttempt, 0)));
    const shared = await makePerson(database, doomed.organisationId, "manager");
    await test.sql(
      `INSERT INTO "Membership" ("userId", "organisationId", "role") VALUES ($1, $2, 'manager')`,
      [shared.id, other.organisationId],
    );

    await test.sql(`SELECT erase_organisation($1)::text`, [doomed.organisationId]);

    expect(await database.organisations.find(doomed.organisationId)).toBeNull();
    expect(await database.users.findAccount(doomed.learnerId)).toBeNull();
    expect(await test.sql(`SELECT 1 FROM "AttemptEvent" WHERE "attemptId" = $1`, [doomedAttempt])).toEqual(
      [],
    );
    expect(await database.attempts.events({ ...other, attemptId: otherAttempt })).toHaveLength(1);
    expect((await database.users.findAccount(shared.id))?.memberships).toHaveLength(1);
    await expect(test.sql(`DELETE FROM "AttemptEvent"`)).rejects.toThrow(/never changed/);
  });
});
