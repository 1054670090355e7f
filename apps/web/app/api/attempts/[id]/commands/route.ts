import { commandSchema } from "@probeworthy/evaluation";
import { z } from "zod";
import { problem, toProblem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { commandAttempt } from "@/server/services/attempts/command-attempt";

export const POST = withRoute({
  auth: ["learner"],
  params: z.object({ id: z.string().min(1).max(64) }),
  body: z.strictObject({ expectedSequence: z.number().int().positive(), command: commandSchema }),
  rateLimit: { name: "attempt_command", requests: 300, perSeconds: 60 },
  audit: "own_log",
  handler: async ({ request, requestId, user, database, params, body }) => {
    const done = await commandAttempt(database, user, { attemptId: params.id, ...body, now: new Date() });
    if (done.ok) return { view: done.value };
    const { error } = done;
    switch (error.code) {
      case "not_found":
        throw problem("not_found");
      case "refused": {
        const { code, message, path } = error.refusal;
        throw problem("refused", {
          reason: code,
          detail: message,
          ...(path === undefined ? {} : { errors: [{ path: `command.${path}`, message }] }),
        });
      }
      case "stale_sequence": {
        const stale = problem("conflict", {
          reason: "stale_sequence",
          detail: "The job has gone on since this page was loaded. Nothing was done.",
        });
        const body = { ...toProblem(stale, new URL(request.url).pathname, requestId), view: error.view };
        return Response.json(body, {
          status: body.status,
          headers: { "Content-Type": "application/problem+json" },
        });
      }
    }
  },
});
