import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { backends, type TestDatabase } from "../support/databases";
import { makeSchool, must, type School, someMoment, someTerms } from "../support/factories";

describe.each(backends)("what staff screens ask for on $name", ({ open }) => {
  let test: TestDatabase;
  let school: School;
  let other: School;

  beforeAll(async () => {
    test = await open();
    school = await makeSchool(test.database);
    other = await makeSchool(test.database);
  });
  afterAll(() => test.close());

  it("a draft is saved only over the state its author has seen", async () => {
    const { scenarios } = test.database;
    const { organisationId, scenarioId } = school;
    const ref = { organisationId, scenarioId };
    const seenAt = (await scenarios.find(ref))?.updatedAt ?? someMoment;
    const savedAt = new Date(seenAt.getTime() + 1000);
    const first = await scenarios.saveDraftOver({ ...ref, title: "One", draft: { a: 1 }, seenAt, savedAt });
    expect(must(first)).toEqual({ savedAt });
    const late = await scenarios.saveDraftOver({ ...ref, title: "Two", draft: { a: 2 }, seenAt, savedAt });
    expect(late).toEqual({ ok: false, error: { code: "changed", savedAt } });
    expect(await scenarios.find(ref)).toMatchObject({ title: "One", draft: { a: 1 }, updatedAt: savedAt });
    const foreign = { ...ref, organisationId: other.organisationId, title: "X", draft: {}, seenAt: savedAt };
    expect(await scenarios.saveDraftOver({ ...foreign, savedAt })).toEqual({
      ok: false,
      error: { code: "not_found" },
    });
  });

  it("one invitation is found in its own organisation only", async () => {
    const { invitations } = test.database;
    const { organisationId, instructorId, scenarioVersionId } = school;
    const { id } = must(
      await invitations.create({
        organisationId,
        createdById: instructorId,
        email: "Candidate@Test.example",
        name: "Candidate",
        role: "learner",
        assignment: { ...someTerms, scenarioVersionId },
        expiresAt: new Date("2026-04-01T00:00:00Z"),
      }),
    );
    const found = await invitations.find({ organisationId, invitationId: id, now: someMoment });
    expect(found).toMatchObject({ id, email: "candidate@test.example", state: "waiting" });
    expect(found).toEqual((await invitations.list({ organisationId, now: someMoment }))[0]);
    expect(
      await invitations.find({ organisationId: other.organisationId, invitationId: id, now: someMoment }),
    ).toBeNull();
  });

  it("the log is narrowed by person and by kind of thing", async () => {
    const { audit } = test.database;
    const { organisationId, instructorId, learnerId } = school;
    const entry = { organisationId, resourceId: null, detail: {}, at: someMoment };
    await audit.append({ ...entry, actorId: instructorId, action: "class.created", resourceType: "class" });
    await audit.append({ ...entry, actorId: learnerId, action: "attempt.started", resourceType: "attempt" });
    const actions = async (filter: { actorId?: string; resourceType?: string }) =>
      (await audit.list({ organisationId, limit: 10, ...filter })).map(({ action }) => action).sort();
    expect(await actions({})).toEqual(["attempt.started", "class.created"]);
    expect(await actions({ actorId: learnerId })).toEqual(["attempt.started"]);
    expect(await actions({ resourceType: "class" })).toEqual(["class.created"]);
    expect(await actions({ actorId: learnerId, resourceType: "class" })).toEqual([]);
    expect(await audit.list({ organisationId: other.organisationId, limit: 10 })).toEqual([]);
  });
});
