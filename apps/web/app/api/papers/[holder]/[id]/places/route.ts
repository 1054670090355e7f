import { layoutPlacePlan } from "@probeworthy/diagram";
import { withRoute } from "@/server/http/with-route";
import { findPapers, paperParams } from "@/server/services/papers";

/** The component-place plan of the whole car. */
export const GET = withRoute({
  auth: "signed_in",
  params: paperParams,
  resource: async ({ user, database, params }) => findPapers(database, user, params),
  handler: async ({ resource: { document } }) => ({ plan: layoutPlacePlan(document) }),
});
