import { hashPassword, verifyPassword } from "@probeworthy/database";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { backends, type TestDatabase } from "../support/databases";
import {
  eventOf,
  makeAttempt,
  makeSchool,
  must,
  type School,
  someMoment,
  someTerms,
} from "../support/factories";

const secrets = {
  passwordHash: "a hash",
  variantSeed: "seed-of-the-variant",
  variant: "secret-fault",
  world: "motorCelsius",
};

describe.each(backends)("secrets on $name", ({ open }) => {
  let test: TestDatabase;
  let school: School;
  let attemptId: string;
  let token: string;

  beforeAll(async () => {
    test = await open();
    const { database } = test;
    school = await makeSchool(database);
    attemptId = await makeAttempt(database, school);
    must(await database.attempts.appendEvent({ ...eventOf(school, attemptId, 0), closeAs: "submitted" }));
    const grade = { rubric: [], score: 6, maximum: 10, status: "final" as const, engineVersion: "engine-1" };
    must(await database.grades.append({ ...school, attemptId, ...grade, createdAt: someMoment }));
    const invited = must(
      await database.invitations.create({
        organisationId: school.organisationId,
        createdById: school.instructorId,
        email: "candidate@test.example",
        name: "Candidate",
        role: "learner",
        assignment: { ...someTerms, scenarioVersionId: school.scenarioVersionId },
        expiresAt: new Date("2026-04-01T00:00:00Z"),
      }),
    );
    token = invited.token;
  });
  afterAll(() => test.close());

  it("stay out of everything that is not named for them", async () => {
    const { organisations, users, memberships, classes, assignments, attempts, grades, invitations, audit } =
      test.database;
    const { organisationId, learnerId, classId, assignmentId } = school;
    const ref = { organisationId, attemptId };
    const answers = await Promise.all([
      organisations.find(organisationId),
      users.findAccount(learnerId),
      users.find({ organisationId, userId: learnerId }),
      users.list({ organisationId }),
      memberships.roleOf({ organisationId, userId: learnerId }),
      classes.roster({ organisationId, classId }),
      classes.list({ organisationId }),
      assignments.listForLearner({ organisationId, learnerId }),
      assignments.listForClass({ organisationId, classId }),
      assignments.listForCandidates({ organisationId }),
      assignments.get({ organisationId, assignmentId }),
      attempts.getForLearner({ ...ref, learnerId }),
      attempts.getForStaff(ref),
      attempts.listForLearner({ organisationId, learnerId }),
      attempts.listForAssignment({ organisationId, assignmentId }),
      attempts.events(ref),
      grades.history(ref),
      grades.gradebook({ organisationId, classId }),
      invitations.list({ organisationId, now: someMoment }),
      invitations.findByToken({ token, now: someMoment }),
      audit.list({ organisationId, limit: 50 }),
    ]);
    for (const answer of answers) {
      expect(answer).not.toBeNull();
      const text = JSON.stringify(answer);
      for (const secret of Object.values(secrets)) expect(text).not.toContain(secret);
      for (const column of [...Object.keys(secrets), "tokenHash"]) expect(text).not.toContain(`"${column}"`);
      expect(text).not.toContain(token);
    }
  });

  it("are answered by the functions named for them", async () => {
    const { attempts, users } = test.database;
    const ref = { organisationId: school.organisationId, attemptId };
    expect(await attempts.getSecrets(ref)).toMatchObject({
      variantSeed: secrets.variantSeed,
      variant: { fault: secrets.variant },
    });
    expect((await attempts.eventsWithWorld(ref))[0]?.world).toEqual({ motorCelsius: 41.5 });
    const learner = await users.findAccount(school.learnerId);
    expect((await users.findByEmailForSignIn(learner!.email))?.passwordHash).toBe(secrets.passwordHash);
  });

  it("the invitation's token is stored as a hash only", async () => {
    const rows = await test.sql(`SELECT "tokenHash" FROM "Invitation"`);
    expect(rows).toHaveLength(1);
    expect(rows[0]?.tokenHash).toMatch(/^[0-9a-f]{64}$/);
    expect(rows[0]?.tokenHash).not.toContain(token);
  });
});

describe("passwords", () => {
  it("are kept as argon2id with a salt of their own, and verified", async () => {
    const [one, two] = await Promise.all([hashPassword("lamp and lead"), hashPassword("lamp and lead")]);
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(one).not.toBe(two);
    expect(await verifyPassword("lamp and lead", one)).toBe(true);
    expect(await verifyPassword("lamp and led", one)).toBe(false);
    expect(await verifyPassword("lamp and lead", null)).toBe(false);
  });
});
