import { withRoute } from "@/server/http/with-route";
import { findSystemPapers, sheetParams } from "@/server/services/papers";
import { chartRowsOf } from "@/server/views/chart-rows";

/** The terminal chart of one system, worked out from the vehicle in order. */
export const GET = withRoute({
  auth: "signed_in",
  params: sheetParams,
  rateLimit: { name: "charts", requests: 60, perSeconds: 60 },
  resource: async ({ user, database, params }) => findSystemPapers(database, user, params),
  handler: async ({ resource: { versionId, document }, params }) => ({
    rows: await chartRowsOf(versionId, document, params.system),
  }),
});
