import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { backends, type TestDatabase } from "../support/databases";
import {
  eventOf,
  makeAttempt,
  makePerson,
  makeSchool,
  must,
  someMoment,
  startOf,
} from "../support/factories";

describe.each(backends)("attempts on $name", ({ open }) => {
  let test: TestDatabase;
  beforeAll(async () => {
    test = await open();
  });
  afterAll(() => test.close());

  it("appends in order and gives back what was logged", async () => {
    const { attempts } = test.database;
    const school = await makeSchool(test.database);
    const attemptId = await makeAttempt(test.database, school);
    expect(await attempts.appendEvent(eventOf(school, attemptId, 0))).toEqual({
      ok: true,
      value: { sequence: 1 },
    });
    expect(await attempts.appendEvent(eventOf(school, attemptId, 1))).toEqual({
      ok: true,
      value: { sequence: 2 },
    });

    const { organisationId } = school;
    expect(await attempts.events({ organisationId, attemptId })).toEqual([
      {
        sequence: 1,
        command: { type: "placeLead", at: 0 },
        observation: { display: "12.60 V" },
        cost: { seconds: 30 },
        elapsedSeconds: 30,
        recordedAt: someMoment,
      },
      {
        sequence: 2,
        command: { type: "placeLead", at: 1 },
        observation: { display: "12.60 V" },
        cost: { seconds: 30 },
        elapsedSeconds: 60,
        recordedAt: someMoment,
      },
    ]);
    expect(await attempts.getSecrets({ organisationId, attemptId })).toMatchObject({
      sequence: 2,
      world: { motorCelsius: 41.5 },
    });
  });

  it("refuses a stale sequence, says where the log is, and writes nothing", async () => {
    const { attempts } = test.database;
    const school = await makeSchool(test.database);
    const attemptId = await makeAttempt(test.database, school);
    must(await attempts.appendEvent(eventOf(school, attemptId, 0)));
    for (const stale of [0, 2, 7]) {
      expect(await attempts.appendEvent(eventOf(school, attemptId, stale))).toEqual({
        ok: false,
        error: { code: "stale_sequence", current: 1 },
      });
    }
    expect(await attempts.events({ ...school, attemptId })).toHaveLength(1);
  });

  it("lets exactly one of many concurrent appends of one sequence win", async () => {
    const { attempts } = test.database;
    const school = await makeSchool(test.database);
    const attemptId = await makeAttempt(test.database, school);
    const results = await Promise.all(
      Array.from({ length: 8 }, () => attempts.appendEvent(eventOf(school, attemptId, 0))),
    );
    expect(results.filter(({ ok }) => ok)).toHaveLength(1);
    const refusals = results.flatMap((result) => (result.ok ? [] : [result.error]));
    expect(refusals).toEqual(Array(7).fill({ code: "stale_sequence", current: 1 }));
    expect(await attempts.events({ ...school, attemptId })).toHaveLength(1);
  });

  it("closes with the last event and takes no other", async () => {
    const { attempts } = test.database;
    const school = await makeSchool(test.database);
    const attemptId = await makeAttempt(test.database, school);
    must(await attempts.appendEvent({ ...eventOf(school, attemptId, 0), closeAs: "submitted" }));
    expect(await attempts.getForLearner({ ...school, attemptId })).toMatchObject({
      status: "submitted",
      sequence: 1,
      submittedAt: someMoment,
    });
    const closed = { ok: false, error: { code: "attempt_closed", status: "submitted" } };
    expect(await attempts.appendEvent(eventOf(school, attemptId, 1))).toEqual(closed);
    expect(await attempts.submit({ ...school, attemptId, at: someMoment })).toEqual(closed);
    expect(await attempts.abandon({ ...school, attemptId, at: someMoment })).toEqual(closed);
  });

  it("answers a foreign organisation and another learner as if the attempt did not exist", async () => {
    const { attempts, grades } = test.database;
    const school = await makeSchool(test.database);
    const other = await makeSchool(test.database);
    const attemptId = await makeAttempt(test.database, school);
    must(await attempts.appendEvent(eventOf(school, attemptId, 0)));
    const foreign = { organisationId: other.organisationId, attemptId };

    const notFound = { ok: false, error: { code: "not_found" } };
    expect(await attempts.getForStaff(foreign)).toBeNull();
    expect(await attempts.getSecrets(foreign)).toBeNull();
    expect(await attempts.events(foreign)).toEqual([]);
    expect(await attempts.eventsWithWorld(foreign)).toEqual([]);
    expect(await attempts.getForLearner({ ...foreign, learnerId: school.learnerId })).toBeNull();
    expect(await grades.history(foreign)).toBeNull();
    expect(await attempts.appendEvent({ ...eventOf(school, attemptId, 1), ...foreign })).toEqual(notFound);
    const classmate = await makePerson(test.database, school.organisationId, "learner");
    const asClassmate = { ...eventOf(school, attemptId, 1), learnerId: classmate.id };
    expect(await attempts.appendEvent(asClassmate)).toEqual(notFound);
    expect(await attempts.getForLearner({ ...school, attemptId, learnerId: classmate.id })).toBeNull();
    expect(await attempts.events({ ...school, attemptId })).toHaveLength(1);
  });

  it("starts within the window only", async () => {
    const opensAt = new Date("2026-03-02T08:00:00Z");
    const closesAt = new Date("2026-03-02T10:00:00Z");
    const school = await makeSchool(test.database, { opensAt, closesAt });
    const at = (now: string) => test.database.attempts.start({ ...startOf(school), now: new Date(now) });
    expect(await at("2026-03-02T07:59:59Z")).toEqual({ ok: false, error: { code: "not_open_yet", opensAt } });
    expect(await at("2026-03-02T10:00:00Z")).toEqual({ ok: false, error: { code: "closed", closesAt } });
    expect(await at("2026-03-02T08:00:00Z")).toMatchObject({ ok: true });
  });

  it("keeps the attempt limit, and one open attempt at a time, under concurrent starts", async () => {
    const { attempts } = test.database;
    const school = await makeSchool(test.database, { attemptLimit: 2 });
    const starts = await Promise.all(Array.from({ length: 5 }, () => attempts.start(startOf(school))));
    const first = starts.flatMap((result) => (result.ok ? [result.value] : []));
    expect(first).toEqual([{ id: expect.any(String), number: 1 }]);
    expect(await attempts.start(startOf(school))).toEqual({
      ok: false,
      error: { code: "already_open", attemptId: first[0]!.id },
    });
    must(await attempts.submit({ ...school, attemptId: first[0]!.id, at: someMoment }));
    const second = must(await attempts.start(startOf(school)));
    expect(second.number).toBe(2);
    must(await attempts.abandon({ ...school, attemptId: second.id, at: someMoment }));
    expect(await attempts.start(startOf(school))).toEqual({
      ok: false,
      error: { code: "attempt_limit_reached", limit: 2 },
    });
  });

  it("starts only for somebody the work was handed to", async () => {
    const school = await makeSchool(test.database);
    const outsider = await makePerson(test.database, school.organisationId, "learner");
    const notFound = { ok: false, error: { code: "not_found" } };
    const { attempts } = test.database;
    expect(await attempts.start({ ...startOf(school), learnerId: outsider.id })).toEqual(notFound);
    expect(await attempts.start({ ...startOf(school), learnerId: school.instructorId })).toEqual(notFound);
    const other = await makeSchool(test.database);
    expect(await attempts.start({ ...startOf(school), organisationId: other.organisationId })).toEqual(
      notFound,
    );
  });
});
