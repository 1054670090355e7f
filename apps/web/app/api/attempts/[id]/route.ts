import { z } from "zod";
import { withRoute } from "@/server/http/with-route";
import { loadOwnAttempt } from "@/server/services/attempts/attempt-record";
import { toLearnerView } from "@/server/services/attempts/command-attempt";

export const GET = withRoute({
  auth: ["learner"],
  params: z.object({ id: z.string().min(1).max(64) }),
  resource: ({ database, user, params }) => loadOwnAttempt(database, user, params.id),
  handler: async ({ resource }) => ({ view: toLearnerView(resource) }),
});
