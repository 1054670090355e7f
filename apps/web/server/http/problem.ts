import "server-only";
import type { z } from "zod";
import {
  type Problem,
  type ProblemCode,
  type ProblemFieldError,
  problemCatalog,
} from "@/features/http/problem";

export interface ProblemOptions {
  /** What is true of this one case, in words for a person. */
  readonly detail?: string;
  /** The domain's own code for a refusal, e.g. `point_not_accessible`. */
  readonly reason?: string;
  readonly errors?: readonly ProblemFieldError[];
  readonly headers?: Readonly<Record<string, string>>;
}

/** Thrown by `problem()` users inside a route; the route wrapper turns it into an RFC 9457 answer. */
export class ProblemError extends Error {
  override readonly name = "ProblemError";

  constructor(
    readonly code: ProblemCode,
    readonly options: ProblemOptions = {},
  ) {
    super(options.detail ?? problemCatalog[code].title);
  }
}

/** `throw problem("not_found")`: the one way for a handler to refuse. */
export function problem(code: ProblemCode, options: ProblemOptions = {}): ProblemError {
  return new ProblemError(code, options);
}

/** @returns a 400 that names each wrong path in the form `lines[2].value`. */
export function invalidInput(error: z.ZodError, where: "body" | "query" | "params"): ProblemError {
  return problem("invalid_input", {
    errors: error.issues.map((issue) => ({ path: formatPath(where, issue.path), message: issue.message })),
  });
}

function formatPath(where: string, path: readonly PropertyKey[]): string {
  const rest = path.reduce<string>(
    (text, part) =>
      typeof part === "number" ? `${text}[${part}]` : `${text}${text === "" ? "" : "."}${String(part)}`,
    "",
  );
  if (where === "body") return rest;
  return rest === "" ? where : `${where}.${rest}`;
}

export function toProblem(error: ProblemError, instance: string, requestId: string): Problem {
  const { status, title, advice } = problemCatalog[error.code];
  const { detail, reason, errors } = error.options;
  return {
    type: `/problems/${error.code}`,
    title,
    status,
    // A fault of ours keeps its detail to the log.
    detail: status >= 500 ? advice : (detail ?? advice),
    instance,
    code: error.code,
    ...(reason === undefined ? {} : { reason }),
    requestId,
    ...(errors === undefined ? {} : { errors: [...errors] }),
  };
}
