import { saveDraftSchema } from "@/features/builder/draft-input";
import { staff } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { checkDraft } from "@/server/services/scenarios/check-draft";
import { findScenario, requireLatestVehicle } from "@/server/services/scenarios/find-scenario";

/** Saves the draft as it is and says what still keeps it from being published. */
export const PUT = withRoute({
  auth: staff,
  params: idParams,
  body: saveDraftSchema,
  bodyLimitBytes: 512 * 1024,
  resource: async ({ user, database, params }) => findScenario(database, user.organisationId, params.id),
  handler: async ({ user, database, resource, body }) => {
    const { organisationId } = user;
    // The key belongs to the scenario, whatever the draft says.
    const draft = { ...body.document, id: resource.key };
    const saved = await database.scenarios.saveDraftOver({
      organisationId,
      scenarioId: resource.id,
      title: body.document.title.trim() || resource.title,
      draft,
      seenAt: body.seenAt === null ? resource.updatedAt : new Date(body.seenAt),
      savedAt: new Date(),
    });
    if (!saved.ok) {
      if (saved.error.code === "not_found") throw problem("not_found");
      throw problem("conflict", {
        reason: "draft_changed",
        detail: "This scenario was changed on another screen. Nothing was saved; your work is still here.",
      });
    }
    const vehicle = await requireLatestVehicle(database, organisationId, resource.vehicleId);
    const { messages } = checkDraft(draft, vehicle.document);
    return { savedAt: saved.value.savedAt.toISOString(), messages };
  },
  audit: ({ resource }) => ({
    action: "scenario.draft_saved",
    resourceType: "scenario",
    resourceId: resource.id,
  }),
});
