import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { backends, type TestDatabase } from "../support/databases";
import { makeAttempt, makeSchool, must, type School, someMoment } from "../support/factories";

describe.each(backends)("grades on $name", ({ open }) => {
  let test: TestDatabase;
  let school: School;
  let attemptId: string;
  beforeAll(async () => {
    test = await open();
    school = await makeSchool(test.database);
    attemptId = await makeAttempt(test.database, school);
  });
  afterAll(() => test.close());

  const grade = (score: number, engineVersion: string) =>
    test.database.grades.append({
      organisationId: school.organisationId,
      attemptId,
      rubric: [{ line: "cause", points: score }],
      score,
      maximum: 100,
      status: "final",
      engineVersion,
      createdAt: someMoment,
    });
  const decide = (score: number | null, reason = "the report says more") =>
    test.database.grades.override({
      organisationId: school.organisationId,
      attemptId,
      byId: school.instructorId,
      reason,
      score,
      createdAt: someMoment,
    });
  const history = () => test.database.grades.history({ organisationId: school.organisationId, attemptId });

  it("go through revisions and decisions without losing any", async () => {
    expect(await grade(60, "engine-1")).toEqual({ ok: false, error: { code: "attempt_open" } });
    expect(await decide(80)).toEqual({ ok: false, error: { code: "not_graded" } });
    must(await test.database.attempts.submit({ ...school, attemptId, at: someMoment }));
    expect(must(await grade(60, "engine-1")).revision).toBe(1);
    expect((await history())?.effective).toEqual({
      score: 60,
      maximum: 100,
      status: "final",
      revision: 1,
      isOverridden: false,
    });

    expect(await decide(101)).toEqual({ ok: false, error: { code: "out_of_range", maximum: 100 } });
    must(await decide(80));
    expect((await history())?.effective).toMatchObject({ score: 80, isOverridden: true });

    // A regrade is a new revision; what a person decided stands until they withdraw it.
    expect(must(await grade(65, "engine-2")).revision).toBe(2);
    expect((await history())?.effective).toMatchObject({ score: 80, revision: 2, isOverridden: true });
    must(await decide(null, "the new grade is right"));
    expect((await history())?.effective).toMatchObject({ score: 65, revision: 2, isOverridden: false });

    const all = await history();
    expect(all?.revisions.map(({ revision, score }) => [revision, score])).toEqual([
      [2, 65],
      [1, 60],
    ]);
    expect(all?.decisions.map(({ score, byId }) => [score, byId])).toEqual([
      [null, school.instructorId],
      [80, school.instructorId],
    ]);
  });

  it("leave an audit entry for every decision, with the score before and after", async () => {
    const { organisationId } = school;
    const entries = await test.database.audit.list({ organisationId, limit: 10 });
    expect(entries.map(({ action, actorId, resourceId }) => ({ action, actorId, resourceId }))).toEqual([
      { action: "grade.override_withdrawn", actorId: school.instructorId, resourceId: attemptId },
      { action: "grade.overridden", actorId: school.instructorId, resourceId: attemptId },
    ]);
    expect(entries.map(({ detail }) => detail)).toMatchObject([
      { before: 80, after: 65, reason: "the new grade is right" },
      { before: 60, after: 80, reason: "the report says more" },
    ]);
  });

  it("refuse a decision without a reason", async () => {
    await expect(decide(50, "  ")).rejects.toThrow(/GradeOverride_has_a_reason/);
    expect((await history())?.decisions).toHaveLength(2);
  });

  it("stand in the gradebook of their own organisation only", async () => {
    const { organisationId, classId, assignmentId, learnerId } = school;
    const book = await test.database.grades.gradebook({ organisationId, classId });
    expect(book?.attempts).toMatchObject([{ attemptId, assignmentId, learnerId, grade: { score: 65 } }]);
    const [row] = await test.database.assignments.listForLearner({ organisationId, learnerId });
    expect(row).toMatchObject({ attemptCount: 1, bestGrade: { score: 65 }, openAttemptId: null });

    const other = await makeSchool(test.database);
    expect(
      await test.database.grades.gradebook({ organisationId: other.organisationId, classId }),
    ).toBeNull();
    expect(
      await test.database.grades.override({
        organisationId: other.organisationId,
        attemptId,
        byId: other.instructorId,
        reason: "not mine",
        score: 1,
        createdAt: someMoment,
      }),
    ).toEqual({ ok: false, error: { code: "not_found" } });
  });
});
