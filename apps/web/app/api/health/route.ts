import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { checkDatabase } from "@/server/services/check-database";

/** For launchers, load balancers and monitors: is this instance able to work? */
export const GET = withRoute({
  auth: "public",
  handler: async ({ database }) => {
    if (!(await checkDatabase(database))) throw problem("unavailable");
    return { status: "ok" };
  },
});
