import { teachers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";
import { findOwnVehicle } from "@/server/services/vehicles/find-vehicle";
import { loadChanges } from "@/server/views/authoring-view";

/** What the next version would change. */
export const GET = withRoute({
  auth: teachers,
  params: idParams,
  resource: async ({ user, database, params }) => findOwnVehicle(database, user.organisationId, params.id),
  handler: async ({ user, database, resource }) => loadChanges(database, user.organisationId, resource),
});
