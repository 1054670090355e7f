import { withRoute } from "@/server/http/with-route";
import { findSystemPapers, sheetParams } from "@/server/services/papers";
import { loadSheet } from "@/server/views/drawings";

/** The wiring diagram of one system as geometry. */
export const GET = withRoute({
  auth: "signed_in",
  params: sheetParams,
  rateLimit: { name: "sheets", requests: 120, perSeconds: 60 },
  resource: async ({ user, database, params }) => findSystemPapers(database, user, params),
  handler: async ({ resource, params }) => ({
    sheet: await loadSheet(resource, params.system),
  }),
});
