import { z } from "zod";

/**
 * Every problem this server answers with. `title` says what happened and `advice` what to do; both are shown to people.
 * The code is also the last part of the problem's `type` address, /problems/<code>.
 */
export const problemCatalog = {
  malformed_request: {
    status: 400,
    title: "The request could not be read",
    advice: "Send one JSON object with the content type application/json.",
  },
  invalid_input: {
    status: 400,
    title: "Some of the input is not right",
    advice: "Correct the fields listed and send it again.",
  },
  unauthenticated: {
    status: 401,
    title: "You are not signed in",
    advice: "Sign in and try again. What you had already sent is kept.",
  },
  forbidden: {
    status: 403,
    title: "This is not yours to do",
    advice: "Ask an administrator if you think you should be able to.",
  },
  cross_origin: {
    status: 403,
    title: "The request came from another site",
    advice: "Open the page on this server and try again.",
  },
  not_found: {
    status: 404,
    title: "There is nothing here",
    advice: "Check the address, or go back and choose it from the list.",
  },
  conflict: {
    status: 409,
    title: "Something changed in the meantime",
    advice: "Load the page again to see the present state, then repeat the step.",
  },
  too_large: {
    status: 413,
    title: "That is more than this address takes",
    advice: "Send a smaller file or fewer entries.",
  },
  unsupported_media_type: {
    status: 415,
    title: "This kind of content is not taken here",
    advice: "Send JSON with the content type application/json.",
  },
  refused: {
    status: 422,
    title: "That cannot be done now",
    advice: "Nothing was changed. The reason is given below.",
  },
  rate_limited: {
    status: 429,
    title: "Too many tries in a short time",
    advice: "Wait a little and try again.",
  },
  internal: {
    status: 500,
    title: "Something went wrong on our side",
    advice: "Try again. If it happens again, give your administrator the request number.",
  },
  unavailable: {
    status: 503,
    title: "The server cannot answer just now",
    advice: "Wait a moment and try again.",
  },
} as const satisfies Record<string, { status: number; title: string; advice: string }>;

export type ProblemCode = keyof typeof problemCatalog;

export const problemCodes = Object.keys(problemCatalog) as [ProblemCode, ...ProblemCode[]];

/** The body of an `application/problem+json` answer (RFC 9457), with our extension members. */
export const problemSchema = z.object({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string().optional(),
  instance: z.string().optional(),
  code: z.enum(problemCodes),
  /** The domain's own code for a refusal, e.g. `point_not_accessible`. */
  reason: z.string().optional(),
  requestId: z.string().optional(),
  errors: z.array(z.object({ path: z.string(), message: z.string() })).optional(),
});

export type Problem = z.infer<typeof problemSchema>;
export type ProblemFieldError = NonNullable<Problem["errors"]>[number];
