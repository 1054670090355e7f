import { z } from "zod";
import { teachers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";
import { findOwnVehicle } from "@/server/services/vehicles/find-vehicle";

/** Takes an own vehicle out of the lists; scenarios and work handed out keep it. */
export const POST = withRoute({
  auth: teachers,
  params: idParams,
  body: z.strictObject({ archived: z.literal(true) }),
  resource: async ({ user, database, params }) => findOwnVehicle(database, user.organisationId, params.id),
  handler: async ({ user, database, resource }) => {
    await database.vehicles.archive({
      organisationId: user.organisationId,
      vehicleId: resource.id,
      archivedAt: new Date(),
    });
  },
  audit: ({ resource }) => ({
    action: "vehicle.archived",
    resourceType: "vehicle",
    resourceId: resource.id,
    detail: { name: resource.name },
  }),
});
