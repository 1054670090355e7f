import { connectorFace } from "@probeworthy/diagram";
import { idSchema } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";
import { findPapers, paperParams } from "@/server/services/papers";

/** Both faces of a connector. */
export const GET = withRoute({
  auth: "signed_in",
  params: paperParams.extend({ connector: idSchema }),
  resource: async ({ user, database, params }) => {
    const papers = await findPapers(database, user, params);
    if (papers === undefined) return undefined;
    const wire = connectorFace(papers.document, params.connector, "wire");
    const terminal = connectorFace(papers.document, params.connector, "terminal");
    return wire === undefined || terminal === undefined ? undefined : { wire, terminal };
  },
  handler: async ({ resource }) => resource,
});
