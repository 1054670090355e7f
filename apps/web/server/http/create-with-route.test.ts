import { describe, expect, it, vi } from "vitest";
import { z } from "zod";
import { problemSchema } from "@/features/http/problem";
import type { SessionUser } from "../auth/session-user";
import { createWithRoute, type RouteDependencies, type RouteHandler } from "./create-with-route";
import { problem } from "./problem";

const learner: SessionUser = {
  userId: "u1",
  organisationId: "o1",
  role: "learner",
  name: "Ada",
  email: "ada@example.test",
};

function setUp(user: SessionUser | undefined = learner) {
  const dependencies = {
    currentUser: async () => user,
    database: async () => ({
      things: new Map([
        ["mine", "u1"],
        ["theirs", "u2"],
      ]),
    }),
    takeFromBudget: vi.fn(async () => {}),
    recordAudit: vi.fn(async () => {}),
    logError: vi.fn(),
    publicUrl: () => "https://probe.example.test",
    newRequestId: () => "request-1",
  } satisfies RouteDependencies<{ things: Map<string, string> }>;
  return { dependencies, withRoute: createWithRoute(dependencies) };
}

const url = "http://127.0.0.1:3000/api/things/mine";

function call(
  route: RouteHandler,
  init: RequestInit & { path?: string; params?: Record<string, string> } = {},
): Promise<Response> {
  const headers = new Headers(init.headers);
  headers.set("host", "127.0.0.1:3000");
  const request = new Request(init.path ?? url, { ...init, headers });
  return route(request, { params: Promise.resolve(init.params ?? {}) });
}

const post = (body: unknown, headers: Record<string, string> = {}) => ({
  method: "POST",
  body: typeof body === "string" ? body : JSON.stringify(body),
  headers: { "content-type": "application/json", ...headers },
});

async function problemOf(response: Response) {
  expect(response.headers.get("content-type")).toBe("application/problem+json");
  expect(response.headers.get("cache-control")).toBe("no-store");
  const body = problemSchema.parse(await response.json());
  expect(body.status).toBe(response.status);
  expect(body.type).toBe(`/problems/${body.code}`);
  return body;
}

describe("who may call", () => {
  it("answers 401 when nobody is signed in, before it reads anything", async () => {
    const { dependencies } = setUp();
    const handler = vi.fn();
    const route = createWithRoute({ ...dependencies, currentUser: async () => undefined })({
      auth: "signed_in",
      audit: "own_log",
      handler,
    });
    const body = await problemOf(await call(route, post("not json")));
    expect(body).toMatchObject({ code: "unauthenticated", status: 401, instance: "/api/things/mine" });
    expect(handler).not.toHaveBeenCalled();
  });

  it("answers 403 to a role that has no business here", async () => {
    const { withRoute } = setUp();
    const route = withRoute({ auth: ["instructor", "administrator"], handler: async () => "secret" });
    expect(await problemOf(await call(route))).toMatchObject({ code: "forbidden", status: 403 });
  });

  it("answers an unknown id, a foreign id and a malformed id in the same bytes", async () => {
    const { withRoute } = setUp();
    const route = withRoute({
      auth: ["learner"],
      params: z.object({ id: z.string().max(20) }),
      resource: async ({ params, user, database }) =>
        database.things.get(params.id) === user.userId ? params.id : undefined,
      handler: async ({ resource }) => ({ id: resource }),
    });
    const bodies = await Promise.all(
      ["theirs", "unknown", "x".repeat(21)].map(async (id) => (await call(route, { params: { id } })).text()),
    );
    expect(new Set(bodies).size).toBe(1);
    expect(JSON.parse(bodies[0]!)).toMatchObject({ status: 404, code: "not_found" });
    expect(await (await call(route, { params: { id: "mine" } })).json()).toEqual({ id: "mine" });
  });

  it("takes one from the person's budget, and passes on a refusal with Retry-After", async () => {
    const { dependencies, withRoute } = setUp();
    const rateLimit = { name: "things", requests: 1, perSeconds: 60 };
    const route = withRoute({ auth: "signed_in", rateLimit, handler: async () => "ok" });
    expect((await call(route)).status).toBe(200);
    expect(dependencies.takeFromBudget).toHaveBeenCalledWith(rateLimit, "u1");
    dependencies.takeFromBudget.mockRejectedValueOnce(
      problem("rate_limited", { headers: { "Retry-After": "9" } }),
    );
    const refused = await call(route);
    expect(refused.headers.get("retry-after")).toBe("9");
    expect(await problemOf(refused)).toMatchObject({ status: 429 });
  });
});

describe("writes from elsewhere", () => {
  const open = () => setUp().withRoute({ auth: "signed_in", audit: "own_log", handler: async () => "done" });

  it.each([
    { origin: "https://elsewhere.test" },
    { origin: "null" },
    { origin: "http://127.0.0.1:3001" },
    { "sec-fetch-site": "cross-site" },
    { "sec-fetch-site": "same-site", origin: "http://127.0.0.1:3000" },
  ])("are refused: %o", async (headers) => {
    expect(await problemOf(await call(open(), post({}, headers)))).toMatchObject({ code: "cross_origin" });
  });

  it.each([
    { origin: "http://127.0.0.1:3000", "sec-fetch-site": "same-origin" },
    { origin: "https://probe.example.test" },
    {},
  ])("are not confused with our own: %o", async (headers: Record<string, string>) => {
    expect((await call(open(), post({}, headers))).status).toBe(200);
  });
});

describe("bad input", () => {
  const bodySchema = z.strictObject({
    weights: z.array(z.object({ line: z.string(), value: z.number().max(100) })),
  });
  const handler = vi.fn(async () => "done");
  const route = () =>
    setUp().withRoute({
      auth: "signed_in",
      audit: "own_log",
      body: bodySchema,
      bodyLimitBytes: 200,
      handler,
    });

  it("names every wrong path", async () => {
    const body = await problemOf(
      await call(route(), post({ weights: [{ line: "cause", value: 50 }, { value: 900 }] })),
    );
    expect(body.code).toBe("invalid_input");
    expect(body.errors?.map((error) => error.path)).toEqual(["weights[1].line", "weights[1].value"]);
    expect(handler).not.toHaveBeenCalled();
  });

  it("marks a wrong query as such", async () => {
    const listed = setUp().withRoute({
      auth: "signed_in",
      query: z.object({ limit: z.coerce.number().max(50) }),
      handler: async ({ query }) => query.limit,
    });
    const body = await problemOf(await call(listed, { path: `${url}?limit=51` }));
    expect(body.errors).toMatchObject([{ path: "query.limit" }]);
    expect(await (await call(listed, { path: `${url}?limit=50` })).json()).toBe(50);
  });

  it.each([
    ["text that is not JSON", post("{"), "malformed_request", 400],
    [
      "a NUL character, which the database cannot keep",
      post({ weights: [], note: "a\u0000b" }),
      "malformed_request",
      400,
    ],
    ["another content type", post("{}", { "content-type": "text/plain" }), "unsupported_media_type", 415],
    ["too many bytes", post({ weights: [], padding: "x".repeat(300) }), "too_large", 413],
    ["a Content-Length that lies", post("x".repeat(300), { "content-length": "2" }), "too_large", 413],
  ])("refuses %s", async (_case, init, code, status) => {
    expect(await problemOf(await call(route(), init))).toMatchObject({ code, status });
    expect(handler).not.toHaveBeenCalled();
  });
});

describe("faults of ours", () => {
  it("hide their detail, and are logged once under the request number", async () => {
    const { dependencies, withRoute } = setUp();
    const error = new Error("password of the database is hunter2");
    const route = withRoute({
      auth: "signed_in",
      handler: async () => {
        throw error;
      },
    });
    const response = await call(route);
    const text = await response.clone().text();
    expect(text).not.toContain("hunter2");
    expect(await problemOf(response)).toMatchObject({ status: 500, requestId: "request-1" });
    expect(dependencies.logError).toHaveBeenCalledExactlyOnceWith({
      requestId: "request-1",
      path: "/api/things/mine",
      method: "GET",
      userId: "u1",
      error,
    });
  });

  it("do not let a write through that leaves no trace", async () => {
    const { dependencies, withRoute } = setUp();
    const handler = vi.fn(async () => "done");
    const response = await call(withRoute({ auth: "signed_in", handler }), post({}));
    expect(response.status).toBe(500);
    expect(handler).not.toHaveBeenCalled();
    expect(dependencies.logError).toHaveBeenCalledOnce();
  });
});

describe("audit", () => {
  it("is written after a write with what the write made, and not after a refusal", async () => {
    const { dependencies, withRoute } = setUp();
    const route = withRoute({
      auth: "signed_in",
      body: z.object({ ok: z.boolean() }),
      handler: async ({ body }) => {
        if (!body.ok) throw problem("refused", { reason: "thing_locked" });
        return { id: "t9" };
      },
      audit: ({ answer }) => ({ action: "thing.created", resourceType: "thing", resourceId: answer.id }),
    });
    expect(await problemOf(await call(route, post({ ok: false })))).toMatchObject({ reason: "thing_locked" });
    expect(dependencies.recordAudit).not.toHaveBeenCalled();
    await call(route, post({ ok: true }));
    expect(dependencies.recordAudit).toHaveBeenCalledExactlyOnceWith({
      action: "thing.created",
      resourceType: "thing",
      resourceId: "t9",
      user: learner,
    });
  });
});
