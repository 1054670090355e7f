import { checkDraft } from "@probeworthy/vehicle/authoring";
import { saveVehicleDraftSchema } from "@/features/authoring/authoring-input";
import { teachers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { findOwnVehicle } from "@/server/services/vehicles/find-vehicle";

/** Saves the draft as it is and says what still keeps it from being published. */
export const PUT = withRoute({
  auth: teachers,
  params: idParams,
  body: saveVehicleDraftSchema,
  bodyLimitBytes: 4 * 1024 * 1024,
  resource: async ({ user, database, params }) => findOwnVehicle(database, user.organisationId, params.id),
  handler: async ({ user, database, resource, body }) => {
    // The key belongs to the vehicle, whatever the draft says.
    const draft = { ...body.document, format: "probeworthy-vehicle-1", id: resource.key };
    const saved = await database.vehicles.saveDraftOver({
      organisationId: user.organisationId,
      vehicleId: resource.id,
      name: body.document.title.trim() || resource.name,
      draft,
      seenAt: body.seenAt === null ? resource.updatedAt : new Date(body.seenAt),
      savedAt: new Date(),
    });
    if (!saved.ok) {
      if (saved.error.code === "not_found") throw problem("not_found");
      throw problem("conflict", {
        reason: "draft_changed",
        detail: "This vehicle was changed on another screen. Nothing was saved; your work is still here.",
      });
    }
    return { savedAt: saved.value.savedAt.toISOString(), messages: checkDraft(draft).messages };
  },
  audit: ({ resource }) => ({
    action: "vehicle.draft_saved",
    resourceType: "vehicle",
    resourceId: resource.id,
  }),
});
