import type { z } from "zod";
import { type Problem, type ProblemCode, problemCatalog, problemSchema } from "./problem";

/** A refused request, with everything the server said about it. `code` is what to branch on. */
export class ApiProblem extends Error {
  override readonly name = "ApiProblem";
  readonly code: ProblemCode;

  constructor(readonly problem: Problem) {
    super(problem.detail ?? problem.title);
    this.code = problem.code;
  }
}

export type ApiMethod = "GET" | "POST" | "PUT" | "PATCH" | "DELETE";

export interface ApiOptions<S extends z.ZodType> {
  readonly method?: ApiMethod;
  /** Sent as JSON. */
  readonly body?: unknown;
  /** The shape the answer must have; anything else is our own bug and throws a ZodError. */
  readonly answer: S;
  readonly signal?: AbortSignal;
}

/**
 * Asks the server and returns the checked answer.
 * @throws ApiProblem when the server refuses or cannot be reached (code `unavailable`).
 */
export async function callApi<S extends z.ZodType>(
  path: string,
  options: ApiOptions<S>,
): Promise<z.output<S>> {
  const response = await send(path, options);
  if (!response.ok) throw new ApiProblem(await readProblem(response));
  return options.answer.parse(response.status === 204 ? undefined : await response.json());
}

/** `callApi` with POST: the usual way to change something. */
export function postJson<S extends z.ZodType>(path: string, body: unknown, answer: S): Promise<z.output<S>> {
  return callApi(path, { method: "POST", body, answer });
}

async function send(path: string, options: ApiOptions<z.ZodType>): Promise<Response> {
  const headers: Record<string, string> = { Accept: "application/json, application/problem+json" };
  if (options.body !== undefined) headers["Content-Type"] = "application/json";
  try {
    return await fetch(path, {
      method: options.method ?? (options.body === undefined ? "GET" : "POST"),
      credentials: "same-origin",
      cache: "no-store",
      headers,
      ...(options.body === undefined ? {} : { body: JSON.stringify(options.body) }),
      ...(options.signal === undefined ? {} : { signal: options.signal }),
    });
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") throw error;
    throw new ApiProblem(
      localProblem("unavailable", 503, "The server did not answer. Check the connection and try again."),
    );
  }
}

async function readProblem(response: Response): Promise<Problem> {
  if (response.headers.get("content-type")?.startsWith("application/problem+json")) {
    const parsed = problemSchema.safeParse(await response.json());
    if (parsed.success) return parsed.data;
  }
  return localProblem(
    response.status >= 500 ? "internal" : "malformed_request",
    response.status,
    `The server answered ${response.status} without saying why.`,
  );
}

function localProblem(code: ProblemCode, status: number, detail: string): Problem {
  return { type: `/problems/${code}`, title: problemCatalog[code].title, status, detail, code };
}
