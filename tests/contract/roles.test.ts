import { randomUUID } from "node:crypto";
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Database, Role } from "@probeworthy/database";
import { starterScenarios } from "@probeworthy/training-vehicle";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { backends, type TestDatabase } from "../support/databases";
import { makePerson } from "../support/factories";
import {
  type College,
  makeAssignment,
  makeChart,
  makeCollege,
  makeGradedAttempt,
  makeInvitation,
  makeOwnVehicle,
  makeScenario,
} from "./support/college";

// Role × route. Every handler is called as the server calls it; only the session and the opening of the database are
// replaced. What a role may not do is 403, nobody signed in is 401, and a thing of another organisation (or of a class
// somebody else teaches) answers exactly like a thing that does not exist.

interface Who {
  userId: string;
  organisationId: string;
  role: Role;
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
// Budgets have a test of their own; here every role calls every route in one go.
vi.mock("@/server/http/rate-limit", () => ({ takeFromBudget: async () => undefined }));

const api = "../../apps/web/app/api";
const origin = "http://127.0.0.1:3000";
const nobody = "01900000-0000-7000-8000-000000000000";

type Handler = (request: Request, context: { params: Promise<Record<string, string>> }) => Promise<Response>;
type Target = { params?: Record<string, string>; body?: unknown; query?: string };

interface RouteRow {
  /** Folder under app/api. */
  route: string;
  method: "GET" | "POST" | "PUT" | "PATCH" | "DELETE";
  /** Who gets through, with the status they get. */
  allowed: Partial<Record<Role, number>>;
  /** A fresh thing to do it to, so that one role's write does not get in another's way. */
  target: (database: Database, college: College) => Promise<Target>;
  /** Answers 404 to an instructor who does not teach the class. */
  ofClass?: boolean;
}

const teachers = { instructor: 200, administrator: 200 };
const teachersNothing = { instructor: 204, administrator: 204 };
const staff = { instructor: 200, manager: 200, administrator: 200 };
const hirers = { manager: 200, administrator: 200 };
const document = starterScenarios[0];
const anyId = { params: { id: nobody } };

const table: RouteRow[] = [
  {
    route: "classes",
    method: "POST",
    allowed: teachers,
    target: async () => ({ body: { title: "New class", term: "Spring" } }),
  },
  {
    route: "classes/[id]/learners",
    method: "POST",
    allowed: teachers,
    ofClass: true,
    target: async (_, { classId }) => ({
      params: { id: classId },
      body: { people: [{ email: `${randomUUID()}@test.example`, name: "Somebody" }] },
    }),
  },
  {
    route: "classes/[id]/learners/[userId]",
    method: "DELETE",
    allowed: teachersNothing,
    ofClass: true,
    target: async (database, { classId, organisationId }) => {
      const { id } = await makePerson(database, organisationId, "learner");
      await database.classes.enrol({ organisationId, classId, userIds: [id] });
      return { params: { id: classId, userId: id } };
    },
  },
  {
    route: "classes/[id]/assignments",
    method: "POST",
    allowed: teachers,
    ofClass: true,
    target: async (_, { classId, terms }) => ({ params: { id: classId }, body: terms }),
  },
  {
    route: "classes/[id]/gradebook",
    method: "GET",
    allowed: teachers,
    ofClass: true,
    target: async (_, { classId }) => ({ params: { id: classId }, query: "?policy=latest" }),
  },
  {
    route: "classes/[id]/statistics",
    method: "GET",
    allowed: teachers,
    ofClass: true,
    target: async (_, { classId }) => ({ params: { id: classId }, query: "?table=confusion" }),
  },
  {
    route: "assignments/[id]/archive",
    method: "POST",
    allowed: teachersNothing,
    ofClass: true,
    target: async (database, college) => ({ params: { id: await makeAssignment(database, college) } }),
  },
  {
    route: "attempts/[id]/override",
    method: "POST",
    // A manager reviews candidates, not classes: the class's attempt is nothing they know of.
    allowed: { instructor: 204, administrator: 204, manager: 404 },
    ofClass: true,
    target: async (database, college) => ({
      params: { id: await makeGradedAttempt(database, college) },
      body: { score: 80, reason: "The report says more than the place." },
    }),
  },
  {
    route: "attempts/[id]/override",
    method: "POST",
    allowed: { instructor: 404, administrator: 204, manager: 204 },
    target: async (database, college) => ({
      params: { id: await makeGradedAttempt(database, college, "candidate") },
      body: { score: 80, reason: "The report says more than the place." },
    }),
  },
  {
    route: "scenarios",
    method: "POST",
    allowed: staff,
    target: async (_, { vehicle, scenarioId }) => ({
      body: { title: "New scenario", vehicleId: vehicle.id, copyOf: scenarioId },
    }),
  },
  {
    route: "scenarios/[id]/draft",
    method: "PUT",
    allowed: staff,
    target: async (database, college) => {
      const { scenarioId, seenAt } = await makeScenario(database, college, false);
      return { params: { id: scenarioId }, body: { seenAt, document: { title: "Half done" } } };
    },
  },
  {
    route: "scenarios/[id]/publish",
    method: "POST",
    allowed: staff,
    target: async (database, college) => {
      const { scenarioId, seenAt } = await makeScenario(database, college, true);
      return { params: { id: scenarioId }, body: { seenAt } };
    },
  },
  {
    route: "scenarios/[id]/preview",
    method: "POST",
    allowed: staff,
    target: async (_, { scenarioId }) => ({ params: { id: scenarioId }, body: { document, seed: "one" } }),
  },
  {
    route: "scenarios/[id]/archive",
    method: "POST",
    allowed: { instructor: 204, manager: 204, administrator: 204 },
    target: async (database, college) => ({
      params: { id: (await makeScenario(database, college, true)).scenarioId },
    }),
  },
  {
    route: "vehicles/[id]/charts",
    method: "POST",
    allowed: teachers,
    target: async (_, { vehicle }) => ({
      params: { id: vehicle.id },
      body: {
        name: "A page of a manual",
        csv: "terminal,function,condition,expected low,expected high,unit\nF2:1,Battery feed,key=off,11,14,V",
      },
    }),
  },
  {
    route: "vehicles/[id]/charts/example",
    method: "GET",
    allowed: teachers,
    target: async (_, { vehicle }) => ({ params: { id: vehicle.id } }),
  },
  {
    route: "vehicles",
    method: "POST",
    allowed: teachers,
    target: async () => ({ body: { start: "blank", title: "Our own car" } }),
  },
  {
    route: "vehicles/lists",
    method: "POST",
    allowed: teachers,
    target: async () => ({
      body: { connectors: "", conductors: "conductor,from,to,colour,mm2,length\nW1,G1:+,F1:1,RD,4,0.6" },
    }),
  },
  {
    route: "vehicles/[id]/draft",
    method: "PUT",
    allowed: teachers,
    target: async (database, college) => {
      const { vehicleId, seenAt } = await makeOwnVehicle(database, college);
      return { params: { id: vehicleId }, body: { seenAt, document: { title: "Half done" } } };
    },
  },
  {
    route: "vehicles/[id]/draft-chart",
    method: "POST",
    allowed: teachers,
    target: async (database, college) => {
      const { vehicleId } = await makeOwnVehicle(database, college);
      return {
        params: { id: vehicleId },
        body: { document: { title: "Bare" }, systemId: "none", csv: null },
      };
    },
  },
  {
    route: "vehicles/[id]/drawing",
    method: "POST",
    allowed: teachers,
    target: async (database, college) => {
      const { vehicleId } = await makeOwnVehicle(database, college);
      return { params: { id: vehicleId }, body: { document: { title: "Bare" }, systemId: "none" } };
    },
  },
  {
    route: "vehicles/[id]/publish",
    method: "POST",
    allowed: teachers,
    target: async (database, college) => {
      const { vehicleId, seenAt } = await makeOwnVehicle(database, college);
      return { params: { id: vehicleId }, body: { seenAt } };
    },
  },
  {
    route: "vehicles/[id]/changes",
    method: "GET",
    allowed: teachers,
    target: async (database, college) => ({
      params: { id: (await makeOwnVehicle(database, college)).vehicleId },
    }),
  },
  {
    route: "vehicles/[id]/export",
    method: "GET",
    allowed: teachers,
    target: async (database, college) => ({
      params: { id: (await makeOwnVehicle(database, college)).vehicleId },
    }),
  },
  {
    route: "vehicles/[id]/archive",
    method: "POST",
    allowed: teachersNothing,
    target: async (database, college) => ({
      params: { id: (await makeOwnVehicle(database, college)).vehicleId },
      body: { archived: true },
    }),
  },
  {
    route: "vehicle-schema",
    method: "GET",
    allowed: { learner: 200, ...staff },
    target: async () => ({}),
  },
  {
    route: "charts/[id]/csv",
    method: "GET",
    allowed: teachers,
    target: async (database, college) => ({ params: { id: await makeChart(database, college) } }),
  },
  {
    route: "candidates",
    method: "POST",
    allowed: hirers,
    target: async (_, { versionId }) => ({
      body: {
        name: "A candidate",
        email: `${randomUUID()}@test.example`,
        scenarioVersionId: versionId,
        title: "Skills check",
        passMark: 70,
        days: 7,
        reveal: "never",
      },
    }),
  },
  {
    route: "candidates/[id]/revoke",
    method: "POST",
    allowed: { manager: 204, administrator: 204 },
    target: async (database, college) => ({ params: { id: await makeInvitation(database, college) } }),
  },
  {
    route: "people",
    method: "POST",
    allowed: { administrator: 200 },
    target: async () => ({
      body: { name: "New person", email: `${randomUUID()}@test.example`, role: "learner" },
    }),
  },
  {
    route: "people/[id]",
    method: "PATCH",
    allowed: { administrator: 204 },
    target: async (database, { organisationId }) => ({
      params: { id: (await makePerson(database, organisationId, "learner")).id },
      body: { role: "instructor" },
    }),
  },
  {
    route: "people/[id]/password",
    method: "POST",
    allowed: { administrator: 200 },
    target: async (database, { organisationId }) => ({
      params: { id: (await makePerson(database, organisationId, "learner")).id },
    }),
  },
  // Papers: of a vehicle for staff, of an attempt for its owner and its reviewers; what they answer has tests of its own.
  ...(
    [
      ["papers/[holder]/[id]/index", {}],
      ["papers/[holder]/[id]/places", {}],
      ["papers/[holder]/[id]/sheets/[system]", { system: "power-steering" }],
      ["papers/[holder]/[id]/drawings/[system]", { system: "power-steering" }],
      ["papers/[holder]/[id]/pdf/[system]", { system: "power-steering" }],
      ["papers/[holder]/[id]/charts/[system]", { system: "power-steering" }],
      ["papers/[holder]/[id]/faces/[connector]", { connector: "X2" }],
    ] as const
  ).map(
    ([route, more]): RouteRow => ({
      route,
      method: "GET",
      allowed: { ...staff, learner: 404 },
      target: async (_, { vehicle }) => ({ params: { holder: "vehicles", id: vehicle.id, ...more } }),
    }),
  ),
  {
    route: "papers/[holder]/[id]/potentials",
    method: "POST",
    allowed: { ...staff, learner: 404 },
    target: async (_, { vehicle }) => ({
      params: { holder: "vehicles", id: vehicle.id },
      body: { of: "vehicle", system: "power-steering", conditions: { key: "on" }, faults: [] },
    }),
  },
  // The learner's own side, for the refusals of everybody else; what it answers a learner has a test of its own.
  {
    route: "attempts",
    method: "POST",
    allowed: { learner: 404 },
    target: async () => ({ body: { assignmentId: nobody } }),
  },
  { route: "attempts/[id]", method: "GET", allowed: { learner: 404 }, target: async () => anyId },
  { route: "attempts/[id]/result", method: "GET", allowed: { learner: 404 }, target: async () => anyId },
  {
    route: "attempts/[id]/commands",
    method: "POST",
    allowed: { learner: 404 },
    target: async () => ({ ...anyId, body: { expectedSequence: 1, command: { type: "takeReading" } } }),
  },
];

async function call(
  { route, method }: RouteRow,
  { params = {}, body, query = "" }: Target,
): Promise<Response> {
  const module = (await import(`${api}/${route}/route.ts`)) as Record<string, Handler | undefined>;
  const handler = module[method];
  if (handler === undefined) throw new Error(`${route} has no ${method}`);
  const path = route.replace(/\[(\w+)\]/g, (_, name: string) => params[name] ?? nobody);
  const request = new Request(`${origin}/api/${path}${query}`, {
    method,
    headers: { Origin: origin, Host: "127.0.0.1:3000", "Content-Type": "application/json" },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  return handler(request, { params: Promise.resolve(params) });
}

/** A refusal without what differs from request to request. */
async function refusalOf(response: Response): Promise<unknown> {
  const { instance: _, requestId: __, ...rest } = (await response.json()) as Record<string, unknown>;
  return { status: response.status, type: response.headers.get("content-type"), ...rest };
}

const signIn = ({ organisationId, people }: College, who: keyof College["people"]): void => {
  const role = who === "colleague" ? "instructor" : who;
  stage.user = { userId: people[who], organisationId, role, name: who, email: `${who}@test.example` };
};

let opened: TestDatabase;
let college: College;
let other: College;
beforeAll(async () => {
  const [embedded] = backends;
  if (embedded === undefined) throw new Error("no database to test on");
  opened = await embedded.open();
  stage.database = opened.database;
  college = await makeCollege(opened.database);
  other = await makeCollege(opened.database);
}, 120_000);
afterAll(() => opened.close());

const roles = ["learner", "instructor", "manager", "administrator"] as const;
const name = ({ method, route }: RouteRow) => `${method} /api/${route}`;

describe.each(table.map((row) => [name(row), row] as const))("%s", (_name, row) => {
  it("asks who is there", async () => {
    stage.user = undefined;
    const response = await call(row, await row.target(opened.database, college));
    expect(response.status).toBe(401);
  });

  it.each(roles)("%s", async (role) => {
    signIn(college, role);
    const response = await call(row, await row.target(opened.database, college));
    expect(response.status, await response.clone().text()).toBe(row.allowed[role] ?? 403);
  });

  const throughRoles = roles.filter((role) => (row.allowed[role] ?? 403) < 300);
  if (throughRoles.length > 0 && row.route.includes("[id]")) {
    it("a thing of another organisation answers like one that does not exist", async () => {
      for (const role of throughRoles) {
        const target = await row.target(opened.database, college);
        signIn(other, role);
        const foreign = await refusalOf(await call(row, target));
        const unknown = await refusalOf(
          await call(row, { ...target, params: { ...target.params, id: nobody } }),
        );
        expect(foreign).toEqual(unknown);
        expect(foreign).toMatchObject({ status: 404, code: "not_found" });
      }
    });
  }

  if (row.ofClass === true) {
    it("a class of a colleague answers like one that does not exist", async () => {
      const target = await row.target(opened.database, college);
      signIn(college, "colleague");
      const answer = await refusalOf(await call(row, target));
      const unknown = await refusalOf(
        await call(row, { ...target, params: { ...target.params, id: nobody } }),
      );
      expect(answer).toEqual(unknown);
      expect(answer).toMatchObject({ status: 404 });
    });
  }

  const [role] = throughRoles;
  if (row.method !== "GET" && role !== undefined) {
    it("is not taken from another site", async () => {
      signIn(college, role);
      const module = (await import(`${api}/${row.route}/route.ts`)) as Record<string, Handler | undefined>;
      const request = new Request(`${origin}/api/x`, {
        method: row.method,
        headers: { Origin: "https://elsewhere.example", Host: "127.0.0.1:3000" },
      });
      const response = await module[row.method]?.(request, { params: Promise.resolve({ id: nobody }) });
      expect(response?.status).toBe(403);
    });
  }
});

describe("the table", () => {
  it("has every route", () => {
    const folder = fileURLToPath(new URL(api, import.meta.url));
    const routes = readdirSync(folder, { recursive: true, encoding: "utf8" })
      .filter((path) => path.endsWith("route.ts"))
      .map((path) => path.replace(/\/route\.ts$/, ""))
      // Their own tests: anybody may ask whether the server lives, and the library signs people in.
      .filter((path) => path !== "health" && !path.startsWith("auth/"));
    expect([...new Set(table.map(({ route }) => route))].sort()).toEqual(routes.sort());
  });
});

describe("what a write leaves behind", () => {
  it("every change of staff has an entry in the log, with who did it", async () => {
    const entries = await opened.database.audit.list({ organisationId: college.organisationId, limit: 500 });
    const actions = new Set(entries.map(({ action }) => action));
    for (const action of [
      "class.created",
      "class.people_enrolled",
      "class.learner_removed",
      "assignment.created",
      "assignment.archived",
      "grade.overridden",
      "scenario.created",
      "scenario.draft_saved",
      "scenario.published",
      "scenario.archived",
      "vehicle.chart_checked",
      "vehicle.created",
      "vehicle.draft_saved",
      "vehicle.published",
      "vehicle.archived",
      "invitation.created",
      "invitation.revoked",
      "person.added",
      "person.role_changed",
      "person.password_replaced",
    ]) {
      expect(actions, action).toContain(action);
    }
    expect(entries.every(({ actorId }) => actorId !== null)).toBe(true);
  });

  it("no entry holds a password or a token", async () => {
    signIn(college, "administrator");
    const row = table.find(({ route }) => route === "people");
    if (row === undefined) throw new Error("the table has no people");
    const answer = await call(row, await row.target(opened.database, college));
    const { password } = (await answer.json()) as { password: string };
    expect(password).toMatch(/^([a-z2-9]{4}-){3}[a-z2-9]{4}$/);
    const entries = await opened.database.audit.list({ organisationId: college.organisationId, limit: 500 });
    expect(JSON.stringify(entries)).not.toContain(password);
  });
});

describe("two screens on one draft", () => {
  it("the second save is refused and nothing of the first is lost, until the author says so", async () => {
    const { database } = opened;
    const { scenarioId, seenAt } = await makeScenario(database, college, false);
    const row = table.find(({ route }) => route === "scenarios/[id]/draft");
    if (row === undefined) throw new Error("the table has no draft");
    signIn(college, "instructor");
    const params = { id: scenarioId };
    const save = (title: string, seen: string | null) =>
      call(row, { params, body: { seenAt: seen, document: { title } } });
    expect((await save("first screen", seenAt)).status).toBe(200);
    const second = await save("second screen", seenAt);
    expect(second.status).toBe(409);
    const read = async () =>
      (await database.scenarios.find({ organisationId: college.organisationId, scenarioId }))?.title;
    expect(await read()).toBe("first screen");
    expect((await save("second screen", null)).status).toBe(200);
    expect(await read()).toBe("second screen");
  });

  it("holds for a vehicle too, and a supplied vehicle cannot be saved over at all", async () => {
    const { database } = opened;
    const { vehicleId, seenAt } = await makeOwnVehicle(database, college);
    const row = table.find(({ route }) => route === "vehicles/[id]/draft");
    if (row === undefined) throw new Error("the table has no draft of a vehicle");
    signIn(college, "instructor");
    const save = (id: string, title: string) =>
      call(row, { params: { id }, body: { seenAt, document: { title } } });
    expect((await save(vehicleId, "first screen")).status).toBe(200);
    const second = await save(vehicleId, "second screen");
    expect(second.status).toBe(409);
    expect(await second.json()).toMatchObject({ reason: "draft_changed" });
    const found = await database.vehicles.find({ organisationId: college.organisationId, vehicleId });
    expect(found?.name).toBe("first screen");
    expect((await save(college.vehicle.id, "not ours")).status).toBe(404);
  });
});
