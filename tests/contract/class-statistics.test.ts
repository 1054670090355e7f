import type { Database } from "@probeworthy/database";
import type { Report } from "@probeworthy/evaluation";
import { makeVariant, type Variant } from "@probeworthy/evaluation/server";
import { starterScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { statisticsViewSchema } from "@/features/statistics/statistics-view";
import { loadClassStatistics } from "@/server/services/statistics/class-statistics";
import { loadStatistics } from "@/server/views/statistics-view";
import { backends, type TestDatabase } from "../support/databases";
import { makePerson, must, someMoment } from "../support/factories";
import { type College, makeAssignment, makeCollege } from "./support/college";

// What an instructor is told of a class: first attempts only, judged as in grading, and no learner by name.

const seed = "seed-that-must-not-show";

/** The scenario's car with these faults in place of the drawn ones. */
function carWith(faults: Variant["faults"]): Variant {
  const [scenario] = starterScenarios;
  if (scenario === undefined) throw new Error("the starter scenarios are empty");
  const drawn = makeVariant(scenario, trainingVehicle, seed);
  if (!drawn.ok) throw new Error(drawn.error.message);
  return { ...drawn.value, normal: faults.length === 0, faults };
}

const fuseBlown: Variant["faults"][number] = { kind: "fuseBlown", component: "F2" };

function naming(kind: Report["cause"]["kind"], place: string): Report {
  return {
    concern: "Steering heavy with the engine running.",
    cause: { kind, place, explanation: "Volts before it and none behind it." },
    correction: { action: "replaceFuse", place: "F2", explanation: "" },
  };
}

interface HandIn {
  readonly assignmentId: string;
  readonly learnerId: string;
  readonly car: Variant;
  /** Null: closed without one. */
  readonly report: Report | null;
}

async function handIn(database: Database, { organisationId, terms }: College, one: HandIn): Promise<void> {
  const { assignmentId, learnerId, car, report } = one;
  const { id: attemptId } = must(
    await database.attempts.start({
      organisationId,
      assignmentId,
      learnerId,
      scenarioVersionId: terms.scenarioVersionId,
      variantSeed: seed,
      variant: car,
      engineVersion: "1",
      now: someMoment,
    }),
  );
  must(
    await database.attempts.appendEvent({
      organisationId,
      attemptId,
      learnerId,
      expectedSequence: 0,
      command: report === null ? { type: "takeReading" } : { type: "submitReport", report },
      observation: {},
      cost: null,
      elapsedSeconds: 0,
      world: {},
      recordedAt: someMoment,
      closeAs: "submitted",
    }),
  );
}

let opened: TestDatabase;
let college: College;
const learners: string[] = [];
const jobs: string[] = [];

beforeAll(async () => {
  const [embedded] = backends;
  if (embedded === undefined) throw new Error("no database to test on");
  opened = await embedded.open();
  const { database } = opened;
  college = await makeCollege(database);
  const { organisationId, classId } = college;
  for (let count = 0; count < 6; count += 1) {
    learners.push((await makePerson(database, organisationId, "learner")).id);
  }
  must(await database.classes.enrol({ organisationId, classId, userIds: learners }));
  jobs.push(await makeAssignment(database, college), await makeAssignment(database, college));

  const [first = "", second = ""] = jobs;
  const [a = "", b = "", c = "", d = "", e = "", f = ""] = learners;
  const right = naming("fuseOpen", "F2");
  const elsewhere = naming("battery", "G1");
  const answers: [string, Report | null][] = [
    [a, right],
    // As good a word for it: stands under the usual one.
    [b, naming("open", "F2")],
    // Right kind at the wrong place: not the cause, though the kind is named.
    [c, naming("fuseOpen", "F11")],
    [d, elsewhere],
    [e, elsewhere],
    [f, null],
  ];
  for (const [learnerId, report] of answers) {
    await handIn(database, college, { assignmentId: first, learnerId, car: carWith([fuseBlown]), report });
  }
  // A second try that finds it must not count.
  await handIn(database, college, {
    assignmentId: first,
    learnerId: d,
    car: carWith([fuseBlown]),
    report: right,
  });
  // Two faults at once, and a car with nothing wrong.
  const two = carWith([fuseBlown, { kind: "fuseBlown", component: "F11" }]);
  await handIn(database, college, { assignmentId: second, learnerId: a, car: two, report: right });
  const fine = naming("workingAsDesigned", "");
  await handIn(database, college, { assignmentId: second, learnerId: b, car: carWith([]), report: fine });
}, 120_000);
afterAll(() => opened.close());

const load = () =>
  loadStatistics(opened.database, college.organisationId, {
    id: college.classId,
    title: "A class",
    term: "Spring",
  });

describe("statistics of a class", () => {
  it("count first attempts, judged as in grading", async () => {
    const view = await load();
    expect(view).toMatchObject({ attempts: 8, withoutReport: 1 });
    const [first, second] = jobs.map((id) => view.items.find(({ assignmentId }) => assignmentId === id));
    expect(first).toMatchObject({ attempts: 6, difficulty: { known: true } });
    if (first?.difficulty.known !== true) throw new Error("expected a share");
    // Two of six. Wilson's interval: 0.0968 … 0.7000.
    expect(first.difficulty.value).toBeCloseTo(2 / 6, 12);
    expect(first.difficulty.low).toBeCloseTo(0.0968, 4);
    expect(first.difficulty.high).toBeCloseTo(0.7, 4);
    expect(second).toMatchObject({
      attempts: null,
      difficulty: { known: false, why: "Too few attempts: 2 of the 5 it takes" },
    });
  });

  it("say how many are missing where there are too few", async () => {
    const { reliability, items } = await load();
    expect(reliability).toEqual({
      alpha: { known: false, why: "Too few attempts: 2 of the 10 it takes" },
      scale: null,
      jointItems: 2,
      complete: 2,
      incomplete: 4,
    });
    for (const { discrimination } of items) expect(discrimination).toMatchObject({ known: false });
  });

  it("set true kinds against named ones, several faults apart", async () => {
    const { confusion } = await load();
    const fuse = "Open fuse, nothing behind it";
    expect(confusion).toMatchObject({ attempts: 6, severalFaults: 1, severalNamed: 0 });
    const row = confusion.rows.find(({ kind }) => kind === fuse);
    const battery = confusion.kinds.indexOf("Battery weak or discharged");
    expect(row?.counts[confusion.kinds.indexOf(fuse)]).toBe(3);
    expect(row?.counts[battery]).toBe(2);
    expect(row).toMatchObject({ attempts: 5, takenFor: "Battery weak or discharged" });
    expect(confusion.rows[0]).toMatchObject({ kind: "Nothing wrong: it works as designed", attempts: 1 });
  });

  it("name no learner and show no secret", async () => {
    const view = await load();
    expect(statisticsViewSchema.parse(view)).toEqual(view);
    const text = JSON.stringify(view);
    for (const hidden of [...learners, seed, "variant", "F2", "@test.example"])
      expect(text).not.toContain(hidden);
  });

  it("leave out who has left the class and work that was put away", async () => {
    const { database } = opened;
    const { organisationId, classId } = college;
    const ref = { organisationId, classId };
    const [, second = ""] = jobs;
    const before = await loadClassStatistics(database, ref);
    await database.assignments.archive({ organisationId, assignmentId: second, archivedAt: someMoment });
    const after = await loadClassStatistics(database, ref);
    expect(before.attempts - after.attempts).toBe(2);
    expect(after.items.map(({ assignmentId }) => assignmentId)).not.toContain(second);
    await database.assignments.archive({ organisationId, assignmentId: second, archivedAt: null });
    const [, , , , , gone = ""] = learners;
    await database.classes.remove({ organisationId, classId, userId: gone });
    expect((await loadClassStatistics(database, ref)).attempts).toBe(before.attempts - 1);
  });

  it("of another organisation are empty", async () => {
    const foreign = await makeCollege(opened.database);
    const found = await loadClassStatistics(opened.database, {
      organisationId: foreign.organisationId,
      classId: college.classId,
    });
    expect(found).toMatchObject({ attempts: 0, items: [] });
  });
});
