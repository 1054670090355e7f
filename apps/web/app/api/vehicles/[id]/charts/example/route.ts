import { teachers } from "@/server/auth/staff";
import { attachment } from "@/server/http/attachment";
import { idParams } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";
import { exampleChart } from "@/server/services/charts/example-chart";
import { loadLatestVehicle } from "@/server/services/scenarios/find-scenario";

/** A chart of this vehicle to start from. */
export const GET = withRoute({
  auth: teachers,
  params: idParams,
  resource: async ({ user, database, params }) => loadLatestVehicle(database, user.organisationId, params.id),
  handler: async ({ resource }) => attachment(exampleChart(resource.document), "example terminal chart.csv"),
});
