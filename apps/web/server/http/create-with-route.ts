import "server-only";
import type { z } from "zod";
import type { Role, SessionUser } from "../auth/session-user";
import { invalidInput, ProblemError, problem, toProblem } from "./problem";
import type { RateLimit } from "./rate-limit";
import { readJsonBody } from "./read-body";
import { remoteAddress } from "./remote-address";
import { isSameOrigin } from "./same-origin";

export interface AuditEntry {
  /** Past tense, resource first: `assignment.created`. */
  readonly action: string;
  readonly resourceType: string;
  readonly resourceId?: string;
  /** Needed only where nobody is signed in; otherwise it is the person's own. */
  readonly organisationId?: string;
  readonly detail?: Readonly<Record<string, z.core.util.JSONType>>;
}

/** What the wrapper needs from the rest of the server; tests hand in their own. */
export interface RouteDependencies<Database> {
  currentUser(): Promise<SessionUser | undefined>;
  database(): Promise<Database>;
  takeFromBudget(limit: RateLimit, key: string): Promise<void>;
  recordAudit(entry: AuditEntry & { readonly user: SessionUser | undefined }): Promise<void>;
  logError(entry: { requestId: string; path: string; method: string; userId?: string; error: unknown }): void;
  publicUrl(): string | undefined;
  newRequestId(): string;
}

/** `"public"`, `"signed_in"` (any role), or the roles that may call this route at all. */
export type RouteAuth = "public" | "signed_in" | readonly Role[];

type UserFor<Auth extends RouteAuth> = Auth extends "public" ? SessionUser | undefined : SessionUser;

/** A route that declares no schema for a part gets `undefined` for it. */
type NoSchema = z.ZodUndefined;

interface Inputs<
  Database,
  Auth extends RouteAuth,
  P extends z.ZodType,
  Q extends z.ZodType,
  B extends z.ZodType,
> {
  readonly request: Request;
  readonly requestId: string;
  readonly user: UserFor<Auth>;
  readonly database: Database;
  readonly params: z.output<P>;
  readonly query: z.output<Q>;
  readonly body: z.output<B>;
}

export interface RouteDefinition<
  Database,
  Auth extends RouteAuth,
  P extends z.ZodType,
  Q extends z.ZodType,
  B extends z.ZodType,
  Resource,
  Answer,
> {
  readonly auth: Auth;
  readonly params?: P;
  readonly query?: Q;
  readonly body?: B;
  /** Default 64 KiB. */
  readonly bodyLimitBytes?: number;
  /** Counted per person, or per address when nobody is signed in. */
  readonly rateLimit?: RateLimit;
  /**
   * Loads what the request is about, scoped to the person. `undefined` answers 404, the same as an unknown id;
   * throw `problem("forbidden")` only for something the person may know of.
   */
  readonly resource?: (inputs: Inputs<Database, Auth, P, Q, B>) => Promise<Resource | undefined>;
  /** Returns a value (sent as JSON, 200), nothing (204) or a Response of its own. */
  readonly handler: (inputs: Inputs<Database, Auth, P, Q, B> & { resource: Resource }) => Promise<Answer>;
  /**
   * The audit row of a write, written after the handler succeeded. `"own_log"` for a write that is itself an
   * append-only record (attempt events); `"nothing_written"` for a POST that only computes (a check, a preview).
   * A write route without any of them is a bug and answers 500.
   * Write it below the handler: TypeScript then knows the type of `answer`.
   */
  readonly audit?:
    | "own_log"
    | "nothing_written"
    | ((done: Inputs<Database, Auth, P, Q, B> & { resource: Resource; answer: Answer }) => AuditEntry);
}

export interface RouteContext {
  readonly params: Promise<Record<string, string | string[] | undefined>>;
}

export type RouteHandler = (request: Request, context: RouteContext) => Promise<Response>;

const defaultBodyLimit = 64 * 1024;

/** Makes the one wrapper every API route goes through: who, may they, how often, is it well formed, then do it. */
export function createWithRoute<Database>(dependencies: RouteDependencies<Database>) {
  return function withRoute<
    const Auth extends RouteAuth,
    P extends z.ZodType = NoSchema,
    Q extends z.ZodType = NoSchema,
    B extends z.ZodType = NoSchema,
    Resource = undefined,
    Answer = unknown,
  >(definition: RouteDefinition<Database, Auth, P, Q, B, Resource, Answer>): RouteHandler {
    return async (request, context) => {
      const requestId = dependencies.newRequestId();
      let user: SessionUser | undefined;
      try {
        const isWrite = request.method !== "GET" && request.method !== "HEAD";
        if (isWrite && !isSameOrigin(request.headers, dependencies.publicUrl()))
          throw problem("cross_origin");
        if (isWrite && definition.audit === undefined) {
          throw new Error("A route that writes must say what it leaves in the audit log.");
        }
        user = await dependencies.currentUser();
        checkRole(definition.auth, user);
        if (definition.rateLimit !== undefined) {
          await dependencies.takeFromBudget(
            definition.rateLimit,
            user?.userId ?? remoteAddress(request.headers),
          );
        }
        const { params, query, body: bodySchema } = definition;
        const inputs = {
          request,
          requestId,
          user: user as UserFor<Auth>,
          database: await dependencies.database(),
          params: parse(params, await context.params, "params"),
          query: parse(query, queryOf(request), "query"),
          body: parse(
            bodySchema,
            bodySchema && (await readJsonBody(request, definition.bodyLimitBytes ?? defaultBodyLimit)),
            "body",
          ),
        };
        const resource = definition.resource === undefined ? undefined : await definition.resource(inputs);
        if (definition.resource !== undefined && resource === undefined) throw problem("not_found");
        const complete = { ...inputs, resource: resource as Resource };
        const answer = await definition.handler(complete);
        if (typeof definition.audit === "function") {
          await dependencies.recordAudit({ ...definition.audit({ ...complete, answer }), user });
        }
        return finish(toResponse(answer), requestId);
      } catch (error) {
        return finish(refuse(error, request, requestId, user), requestId);
      }
    };
  };

  function refuse(
    error: unknown,
    request: Request,
    requestId: string,
    user: SessionUser | undefined,
  ): Response {
    const path = new URL(request.url).pathname;
    const known = error instanceof ProblemError ? error : problem("internal");
    const body = toProblem(known, path, requestId);
    if (body.status >= 500) {
      dependencies.logError({
        requestId,
        path,
        method: request.method,
        ...(user === undefined ? {} : { userId: user.userId }),
        error,
      });
    }
    return Response.json(body, {
      status: body.status,
      headers: { ...known.options.headers, "Content-Type": "application/problem+json" },
    });
  }
}

function checkRole(auth: RouteAuth, user: SessionUser | undefined): void {
  if (auth === "public") return;
  if (user === undefined) throw problem("unauthenticated");
  if (auth !== "signed_in" && !auth.includes(user.role)) throw problem("forbidden");
}

function parse<S extends z.ZodType>(
  schema: S | undefined,
  value: unknown,
  where: "params" | "query" | "body",
): z.output<S> {
  if (schema === undefined) return undefined as z.output<S>;
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  // An id that is not even an id answers like one that nobody has.
  if (where === "params") throw problem("not_found");
  throw invalidInput(result.error, where);
}

function queryOf(request: Request): Record<string, string | string[]> {
  const search = new URL(request.url).searchParams;
  return Object.fromEntries(
    [...new Set(search.keys())].map((key) => {
      const all = search.getAll(key);
      return [key, all.length === 1 ? (all[0] ?? "") : all];
    }),
  );
}

function toResponse(answer: unknown): Response {
  if (answer instanceof Response) return answer;
  return answer === undefined ? new Response(null, { status: 204 }) : Response.json(answer);
}

function finish(response: Response, requestId: string): Response {
  response.headers.set("Cache-Control", "no-store");
  response.headers.set("X-Request-Id", requestId);
  return response;
}
