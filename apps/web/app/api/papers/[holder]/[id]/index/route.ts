import { withRoute } from "@/server/http/with-route";
import { findPapers, paperParams } from "@/server/services/papers";
import { paperIndexOf } from "@/server/views/paper-index";

/** What there is to choose from and to search in. */
export const GET = withRoute({
  auth: "signed_in",
  params: paperParams,
  resource: async ({ user, database, params }) => findPapers(database, user, params),
  handler: async ({ resource: { versionId, document } }) => paperIndexOf(versionId, document),
});
