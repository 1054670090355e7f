import { z } from "zod";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { startAttempt } from "@/server/services/attempts/start-attempt";

export const POST = withRoute({
  auth: ["learner"],
  body: z.strictObject({ assignmentId: z.string().min(1).max(64) }),
  rateLimit: { name: "start_attempt", requests: 20, perSeconds: 60 },
  handler: async ({ user, database, body }) => {
    const started = await startAttempt(database, user, body.assignmentId, new Date());
    if (started.ok) return started.value;
    if (started.error.code === "not_found") throw problem("not_found");
    throw problem("refused", { reason: started.error.code, detail: started.error.message });
  },
  audit: ({ answer, body }) => ({
    action: "attempt.started",
    resourceType: "attempt",
    resourceId: answer.attemptId,
    detail: { assignmentId: body.assignmentId },
  }),
});
