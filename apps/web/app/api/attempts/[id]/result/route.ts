import { z } from "zod";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { loadResult } from "@/server/views/result-view";

export const GET = withRoute({
  auth: ["learner"],
  params: z.object({ id: z.string().min(1).max(64) }),
  handler: async ({ user, database, params }) => {
    const answer = await loadResult(database, user, params.id, new Date());
    if (answer.kind === "unknown") throw problem("not_found");
    if (answer.kind === "open") {
      throw problem("refused", { reason: "attempt_open", detail: "Hand in the report first." });
    }
    return { result: answer.view };
  },
});
