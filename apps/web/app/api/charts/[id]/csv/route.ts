import { teachers } from "@/server/auth/staff";
import { attachment } from "@/server/http/attachment";
import { idParams } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";

/** A chart as its author uploaded it. */
export const GET = withRoute({
  auth: teachers,
  params: idParams,
  resource: async ({ user, database, params }) =>
    (await database.charts.find({ organisationId: user.organisationId, chartId: params.id })) ?? undefined,
  handler: async ({ resource }) => attachment(resource.csv, `${resource.name}.csv`),
});
