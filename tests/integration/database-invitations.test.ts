import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { backends, type TestDatabase } from "../support/databases";
import { makeSchool, must, type School, someMoment, someTerms } from "../support/factories";

describe.each(backends)("invitations on $name", ({ open }) => {
  let test: TestDatabase;
  let school: School;
  beforeAll(async () => {
    test = await open();
    school = await makeSchool(test.database);
  });
  afterAll(() => test.close());

  let counter = 0;
  const invite = async (email = `candidate-${++counter}@test.example`) => {
    const created = await test.database.invitations.create({
      organisationId: school.organisationId,
      createdById: school.instructorId,
      email,
      name: "Candidate",
      role: "learner",
      assignment: { ...someTerms, mode: "check", scenarioVersionId: school.scenarioVersionId },
      expiresAt: new Date("2026-03-09T08:00:00Z"),
    });
    return { email, ...must(created) };
  };
  const use = (token: string, signedInUserId: string | null = null, now = someMoment) =>
    test.database.invitations.consume({
      token,
      name: "Candidate",
      passwordHash: "new hash",
      signedInUserId,
      now,
    });

  it("opens an account with the work in it", async () => {
    const { token, assignmentId, id } = await invite();
    const { userId } = must(await use(token));
    const { organisationId } = school;
    expect(await test.database.memberships.roleOf({ organisationId, userId })).toBe("learner");
    const work = await test.database.assignments.listForLearner({ organisationId, learnerId: userId });
    expect(work.map(({ id }) => id)).toEqual([assignmentId]);
    const listed = await test.database.invitations.list({ organisationId, now: someMoment });
    expect(listed.find((one) => one.id === id)).toMatchObject({ state: "used", usedById: userId });
  });

  it("is used once, however many use it at the same moment", async () => {
    const { token } = await invite();
    const results = await Promise.all(Array.from({ length: 6 }, () => use(token)));
    expect(results.filter(({ ok }) => ok)).toHaveLength(1);
    const again = await use(token);
    expect(again).toEqual({ ok: false, error: { code: "used" } });
  });

  it("refuses an unknown, an expired and a revoked link, each by its name", async () => {
    expect(await use("no-such-token")).toEqual({ ok: false, error: { code: "unknown" } });
    const late = await invite();
    const afterwards = new Date("2026-03-09T08:00:00Z");
    expect(await use(late.token, null, afterwards)).toEqual({ ok: false, error: { code: "expired" } });
    const revoked = await invite();
    const { organisationId } = school;
    const withdrawal = { organisationId, invitationId: revoked.id, revokedAt: someMoment };
    const other = await makeSchool(test.database);
    expect(
      await test.database.invitations.revoke({ ...withdrawal, organisationId: other.organisationId }),
    ).toBe(false);
    expect(await test.database.invitations.revoke(withdrawal)).toBe(true);
    expect(await use(revoked.token)).toEqual({ ok: false, error: { code: "revoked" } });
  });

  it("never opens somebody's existing account by itself, and stays usable for its owner", async () => {
    const other = await makeSchool(test.database);
    const account = await test.database.users.findAccount(other.learnerId);
    const { token } = await invite(account!.email.toUpperCase());
    expect(await use(token)).toEqual({ ok: false, error: { code: "sign_in_required" } });
    expect(await use(token, school.learnerId)).toEqual({ ok: false, error: { code: "sign_in_required" } });
    expect(must(await use(token, other.learnerId)).userId).toBe(other.learnerId);
    const after = await test.database.users.findByEmailForSignIn(account!.email);
    expect(after?.passwordHash).toBe("a hash");
    expect(after?.memberships).toHaveLength(2);
  });
});
