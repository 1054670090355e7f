import { setImmediate } from "node:timers/promises";
import type { AssignmentTerms, Database } from "@probeworthy/database";
import type { Command, ScenarioDocument } from "@probeworthy/evaluation";
import { variantSchema } from "@probeworthy/evaluation/server";
import { starterScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { z } from "zod";
import { backends, type TestDatabase } from "../support/databases";
import { makePerson, makeSchool, must } from "../support/factories";

// Every learner route is called as the browser calls it; every byte that comes back is searched for that very attempt's
// secrets. Only the session and the opening of the database are replaced.

interface Who {
  userId: string;
  organisationId: string;
  role: "learner";
  name: string;
  email: string;
}
const stage = vi.hoisted(() => ({
  user: undefined as Who | undefined,
  database: undefined as Database | undefined,
}));
vi.mock("@/server/auth/session", () => ({ currentUser: async () => stage.user }));
vi.mock("@/server/database", () => ({ database: async () => stage.database }));
vi.mock("@/env", () => ({ env: () => ({ NEXTAUTH_URL: undefined, PROBEWORTHY_LOG_LEVEL: "silent" }) }));

const { POST: startRoute } = await import("../../apps/web/app/api/attempts/route");
const { GET: viewRoute } = await import("../../apps/web/app/api/attempts/[id]/route");
const { POST: commandRoute } = await import("../../apps/web/app/api/attempts/[id]/commands/route");
const { GET: resultRoute } = await import("../../apps/web/app/api/attempts/[id]/result/route");
const { POST: potentialsRoute } = await import(
  "../../apps/web/app/api/papers/[holder]/[id]/potentials/route"
);
const { GET: sheetRoute } = await import("../../apps/web/app/api/papers/[holder]/[id]/sheets/[system]/route");
const { GET: indexRoute } = await import("../../apps/web/app/api/papers/[holder]/[id]/index/route");

const origin = "http://127.0.0.1:3000";
const context = (id?: string) => ({ params: Promise.resolve(id === undefined ? {} : { id }) });
const post = (path: string, body: unknown) =>
  new Request(origin + path, {
    method: "POST",
    headers: { "Content-Type": "application/json", Origin: origin, Host: "127.0.0.1:3000" },
    body: JSON.stringify(body),
  });
const get = (path: string) => new Request(origin + path);

/** Keys that no answer to a learner may have before the result is let out. */
const secretKeys = [
  ..."fault faults seed variantSeed variant pool candidate candidates weights rubric passMark par".split(" "),
  ..."world slow remarks blownFuses instructorNote learningGoal truth standing ruledOut severity".split(" "),
];

const keysOf = (value: unknown): string[] =>
  typeof value !== "object" || value === null
    ? []
    : Object.entries(value).flatMap(([key, inner]) => [
        ...(Array.isArray(value) ? [] : [key]),
        ...keysOf(inner),
      ]);

/** What of the secrets is found in a body: by key, and by this attempt's own words. */
function leaksIn(body: string, secrets: readonly string[]): string[] {
  const keys = body === "" ? [] : keysOf(JSON.parse(body)).filter((key) => secretKeys.includes(key));
  return [...keys.map((key) => `key ${key}`), ...secrets.filter((secret) => body.includes(secret))];
}

let opened: TestDatabase;
beforeAll(async () => {
  const [embedded] = backends;
  if (embedded === undefined) throw new Error("no database to test on");
  opened = await embedded.open();
  stage.database = opened.database;
});
afterAll(() => opened.close());

/** A school whose one assignment is this scenario on the training vehicle. */
async function handOut(scenario: ScenarioDocument, terms: Partial<AssignmentTerms>) {
  const { database } = opened;
  const school = await makeSchool(database);
  const { organisationId, instructorId, classId } = school;
  const vehicle = must(
    await database.vehicles.create({
      organisationId,
      key: trainingVehicle.id,
      name: trainingVehicle.title,
      document: trainingVehicle,
      createdById: instructorId,
    }),
  );
  const created = must(
    await database.scenarios.create({
      organisationId,
      key: scenario.id,
      title: scenario.title,
      vehicleId: vehicle.id,
      draft: null,
      createdById: instructorId,
    }),
  );
  const version = must(
    await database.scenarios.publish({
      organisationId,
      scenarioId: created.id,
      vehicleVersionId: vehicle.versionId,
      document: scenario,
      createdById: instructorId,
    }),
  );
  const assignment = must(
    await database.assignments.create({
      organisationId,
      for: { classId },
      createdById: instructorId,
      title: "A job",
      scenarioVersionId: version.id,
      mode: "practice",
      opensAt: null,
      closesAt: null,
      attemptLimit: null,
      weights: scenario.weights,
      passMark: scenario.passMark,
      reveal: "after_submission",
      ...terms,
    }),
  );
  return { ...school, assignmentId: assignment.id };
}

const signIn = (userId: string, organisationId: string): void => {
  stage.user = { userId, organisationId, role: "learner", name: "L", email: "l@test.example" };
};

async function startAttempt(assignmentId: string): Promise<{ id: string; body: string }> {
  const answer = await startRoute(post("/api/attempts", { assignmentId }), context());
  const body = await answer.text();
  expect(answer.status, body).toBe(200);
  return { id: z.object({ attemptId: z.string() }).parse(JSON.parse(body)).attemptId, body };
}

/** The words of this attempt that must stay on the server. */
async function secretsOf(
  scenario: ScenarioDocument,
  organisationId: string,
  attemptId: string,
): Promise<string[]> {
  const stored = await opened.database.attempts.getSecrets({ organisationId, attemptId });
  const variant = variantSchema.parse(stored?.variant);
  const entry = scenario.pool.find(({ id }) => id === variant.candidate);
  const drawn = variant.faults.flatMap((fault) =>
    Object.values(fault).flatMap((value) =>
      typeof value === "number" && !Number.isInteger(value) ? [`:${value},`, `:${value}}`] : [],
    ),
  );
  return [
    variant.seed,
    variant.candidate,
    scenario.id,
    scenario.instructorNote,
    scenario.learningGoal,
    ...(entry !== undefined && entry.title.length > 12 ? [entry.title] : []),
    ...variant.faults.map((fault) => JSON.stringify(fault)),
    ...drawn,
  ];
}

const work: Command[] = [
  { type: "setConditions", values: { key: "on" } },
  { type: "placeLead", lead: "black", point: "G1:-" },
  { type: "placeLead", lead: "red", point: "F2:2" },
  { type: "takeReading", prediction: { kind: "figure", value: 12.5 } },
  { type: "readCodes", module: "A1" },
  { type: "readLiveData", module: "A1" },
  { type: "pullFuse", fuse: "F2" },
];
const refused: unknown[] = [
  { type: "placeLead", lead: "red", point: "nowhere" },
  { type: "unplug", connector: "X999" },
  { type: "setConditions", values: { key: "sideways" } },
  { type: "explode" },
];
const report: Command = {
  type: "submitReport",
  report: {
    concern: "The complaint is confirmed.",
    cause: { kind: "open", place: "X10.1", explanation: "The readings show it." },
    correction: { action: "repairTerminal", place: "X10.1", explanation: "" },
  },
};
const potentialsOfLine1 = { of: "attempt", system: "power-steering", line: 1 };
const viewOf = z.looseObject({ view: z.looseObject({ sequence: z.number() }) });

async function play(attemptId: string, send: (command: unknown, sequence: number) => Promise<string>) {
  const path = `/api/attempts/${attemptId}`;
  const first = await (await viewRoute(get(path), context(attemptId))).text();
  const bodies = [first];
  let sequence = viewOf.parse(JSON.parse(first)).view.sequence;
  for (const command of work) {
    const body = await send(command, sequence);
    bodies.push(body);
    sequence = viewOf.parse(JSON.parse(body)).view.sequence;
  }
  for (const command of refused) bodies.push(await send(command, sequence));
  bodies.push(await send(work[0], 1)); // stale
  return { bodies, sequence };
}

const named = (id: string): ScenarioDocument => {
  const found = starterScenarios.find((scenario) => scenario.id === id);
  if (found === undefined) throw new Error(`no scenario ${id}`);
  return found;
};

describe("what the learner's routes answer", () => {
  it.each(["heavy-all-at-once", "gives-up-in-tight-turns"])(
    "%s: nothing of fault, seed, rubric or weights until the result is let out, and then no seed",
    { timeout: 120_000 },
    async (id) => {
      const scenario = named(id);
      const school = await handOut(scenario, { reveal: "never" });
      signIn(school.learnerId, school.organisationId);
      const { id: attemptId, body } = await startAttempt(school.assignmentId);
      const secrets = await secretsOf(scenario, school.organisationId, attemptId);
      const path = `/api/attempts/${attemptId}/commands`;
      const send = async (command: unknown, expectedSequence: number) =>
        (await commandRoute(post(path, { expectedSequence, command }), context(attemptId))).text();

      const { bodies, sequence } = await play(attemptId, send);
      const early = await resultRoute(get(`/api/attempts/${attemptId}/result`), context(attemptId));
      expect(early.status).toBe(422);
      bodies.push(body, await early.text(), await send(report, sequence));
      const kept = await resultRoute(get(`/api/attempts/${attemptId}/result`), context(attemptId));
      expect(kept.status).toBe(200);
      bodies.push(await kept.text(), await send(work[0], sequence + 1));
      for (const answer of bodies) expect(leaksIn(answer, secrets)).toEqual([]);
    },
  );

  it("lets out reasons and truth after submission where the assignment allows it, but never seed, note or weights", {
    timeout: 120_000,
  }, async () => {
    const scenario = named("heavy-all-at-once");
    const school = await handOut(scenario, { reveal: "after_submission" });
    signIn(school.learnerId, school.organisationId);
    const { id: attemptId } = await startAttempt(school.assignmentId);
    const sent = await commandRoute(
      post(`/api/attempts/${attemptId}/commands`, { expectedSequence: 1, command: report }),
      context(attemptId),
    );
    expect(sent.status).toBe(200);
    const answer = await resultRoute(get(`/api/attempts/${attemptId}/result`), context(attemptId));
    const text = await answer.text();
    const { grade } = z
      .object({ result: z.object({ grade: z.looseObject({}) }) })
      .parse(JSON.parse(text)).result;
    expect(Object.keys(grade).sort()).toEqual(
      "awaitsPerson decision evidence lines passMark passed score truth".split(" "),
    );
    const secrets = await secretsOf(scenario, school.organisationId, attemptId);
    const [seed, candidate] = secrets;
    for (const secret of [seed, candidate, scenario.id, scenario.instructorNote, scenario.learningGoal]) {
      expect(text).not.toContain(secret);
    }
    expect(
      keysOf(JSON.parse(text)).filter((key) =>
        ["seed", "variant", "faults", "weights", "world"].includes(key),
      ),
    ).toEqual([]);
  });

  it("says that a report is being graded while it is, without a secret, and shows the result after", {
    timeout: 120_000,
  }, async () => {
    const scenario = named("heavy-all-at-once");
    const school = await handOut(scenario, { reveal: "after_submission" });
    signIn(school.learnerId, school.organisationId);
    const { id: attemptId } = await startAttempt(school.assignmentId);
    const secrets = await secretsOf(scenario, school.organisationId, attemptId);
    const path = `/api/attempts/${attemptId}`;
    const send = async (command: unknown, expectedSequence: number) =>
      (
        await commandRoute(post(`${path}/commands`, { expectedSequence, command }), context(attemptId))
      ).text();
    const { sequence } = await play(attemptId, send);
    const resultKind = z.object({ result: z.object({ kind: z.string() }) });
    const look = async () => {
      const answer = await resultRoute(get(`${path}/result`), context(attemptId));
      const text = await answer.text();
      return { kind: answer.ok ? resultKind.parse(JSON.parse(text)).result.kind : "open", text };
    };

    const handIn = { done: false };
    const handedIn = send(report, sequence).finally(() => {
      handIn.done = true;
    });
    const seen = new Set<string>();
    while (!handIn.done) {
      await setImmediate(); // a real caller's request comes in turn with the grading, never before it
      const { kind, text } = await look();
      seen.add(kind);
      if (kind !== "shown") expect(leaksIn(text, secrets)).toEqual([]);
    }
    await handedIn;
    expect([...seen]).toContain("being_graded");
    expect((await look()).kind).toBe("shown");
  });

  it("keeps the result back until the assignment closes when it says so", { timeout: 120_000 }, async () => {
    const scenario = named("heavy-all-at-once");
    const school = await handOut(scenario, {
      reveal: "after_close",
      closesAt: new Date(Date.now() + 3_600_000),
    });
    signIn(school.learnerId, school.organisationId);
    const { id: attemptId } = await startAttempt(school.assignmentId);
    await commandRoute(
      post(`/api/attempts/${attemptId}/commands`, { expectedSequence: 1, command: report }),
      context(attemptId),
    );
    const text = await (
      await resultRoute(get(`/api/attempts/${attemptId}/result`), context(attemptId))
    ).text();
    expect(JSON.parse(text)).toMatchObject({ result: { kind: "kept_back" } });
    expect(leaksIn(text, await secretsOf(scenario, school.organisationId, attemptId))).toEqual([]);
  });

  it.each([
    ["never", null],
    ["after_close", 3_600_000],
  ] as const)(
    "keeps volts and amps of the car back while the result is: reveal %s",
    { timeout: 120_000 },
    async (reveal, closesIn) => {
      const scenario = named("heavy-all-at-once");
      const closesAt = closesIn === null ? null : new Date(Date.now() + closesIn);
      const school = await handOut(scenario, { reveal, closesAt });
      signIn(school.learnerId, school.organisationId);
      const { id } = await startAttempt(school.assignmentId);
      const secrets = await secretsOf(scenario, school.organisationId, id);
      const paper = { params: Promise.resolve({ holder: "attempts", id, system: scenario.system }) };
      const ask = () =>
        potentialsRoute(post(`/api/papers/attempts/${id}/potentials`, potentialsOfLine1), paper);

      const open = await ask();
      expect(open.status).toBe(422);
      const bodies = [await open.text()];
      await commandRoute(
        post(`/api/attempts/${id}/commands`, { expectedSequence: 1, command: report }),
        context(id),
      );
      const kept = await ask();
      expect(kept.status).toBe(422);
      bodies.push(await kept.text());
      for (const body of bodies) {
        expect(JSON.parse(body)).toMatchObject({ reason: "kept_back" });
        expect(keysOf(JSON.parse(body))).not.toContain("conductors");
      }
      const sheet = await sheetRoute(get(`/api/papers/attempts/${id}/sheets/${scenario.system}`), paper);
      expect(sheet.status).toBe(200);
      const index = await indexRoute(get(`/api/papers/attempts/${id}/index`), paper);
      expect(index.status).toBe(200);
      bodies.push(await sheet.text(), await index.text());
      for (const body of bodies) expect(leaksIn(body, secrets)).toEqual([]);
    },
  );

  it("gives volts and amps of the learner's own car once the result is out, and only of that", {
    timeout: 120_000,
  }, async () => {
    const scenario = named("heavy-all-at-once");
    const school = await handOut(scenario, { reveal: "after_submission" });
    signIn(school.learnerId, school.organisationId);
    const { id } = await startAttempt(school.assignmentId);
    const paper = { params: Promise.resolve({ holder: "attempts", id }) };
    const ask = (body: unknown) =>
      potentialsRoute(post(`/api/papers/attempts/${id}/potentials`, body), paper);
    expect((await ask(potentialsOfLine1)).status).toBe(422);
    await commandRoute(
      post(`/api/attempts/${id}/commands`, { expectedSequence: 1, command: report }),
      context(id),
    );
    const shown = await ask(potentialsOfLine1);
    const text = await shown.text();
    expect(shown.status, text).toBe(200);
    const secrets = await secretsOf(scenario, school.organisationId, id);
    expect(leaksIn(text, secrets.slice(0, 5))).toEqual([]);
    expect(Object.keys(JSON.parse(text)).sort()).toEqual(
      "apart conductors noticed noticedFirst points supplyVolts".split(" "),
    );
    const live = { of: "vehicle", system: scenario.system, conditions: {}, faults: [] };
    expect((await ask(live)).status).toBe(422);
    expect((await ask({ ...potentialsOfLine1, line: 99 })).status).toBe(422);
    expect((await ask({ ...potentialsOfLine1, system: "no-such-system" })).status).toBe(404);
  });

  it("answers somebody else's attempt like an unknown one, and changes nothing", async () => {
    const school = await handOut(named("heavy-all-at-once"), {});
    signIn(school.learnerId, school.organisationId);
    const { id: attemptId } = await startAttempt(school.assignmentId);
    const stranger = await makePerson(opened.database, school.organisationId, "learner");
    signIn(stranger.id, school.organisationId);
    const problems = [];
    for (const id of [attemptId, "01990000-0000-7000-8000-000000000000"]) {
      const path = `/api/attempts/${id}`;
      for (const answer of [
        await viewRoute(get(path), context(id)),
        await resultRoute(get(`${path}/result`), context(id)),
        await commandRoute(post(`${path}/commands`, { expectedSequence: 1, command: work[0] }), context(id)),
      ]) {
        expect(answer.headers.get("content-type")).toBe("application/problem+json");
        const { requestId: _, instance: __, ...problem } = z.looseObject({}).parse(await answer.json());
        problems.push({ status: answer.status, ...problem });
      }
    }
    expect(problems.every(({ status }) => status === 404)).toBe(true);
    expect(problems.slice(0, 3)).toEqual(problems.slice(3));
    const stored = await opened.database.attempts.getForLearner({
      organisationId: school.organisationId,
      attemptId,
      learnerId: school.learnerId,
    });
    expect(stored?.sequence).toBe(1);
  });

  it("is searched by a search that finds what is planted", () => {
    const body = JSON.stringify({ view: { log: [{ world: { slow: 1 } }], note: "seed-123" } });
    expect(leaksIn(body, ["seed-123", "not there"])).toEqual(["key world", "key slow", "seed-123"]);
  });
});
