import { previewInputSchema } from "@/features/builder/draft-input";
import { staff } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { checkDraft } from "@/server/services/scenarios/check-draft";
import { findScenario, requireLatestVehicle } from "@/server/services/scenarios/find-scenario";
import { previewDraft } from "@/server/views/preview-view";

/** Draws one variant of a draft and simulates it: one at a time, so that the author sees them come. */
export const POST = withRoute({
  auth: staff,
  params: idParams,
  body: previewInputSchema,
  bodyLimitBytes: 512 * 1024,
  rateLimit: { name: "preview_variant", requests: 120, perSeconds: 60 },
  audit: "nothing_written",
  resource: async ({ user, database, params }) => findScenario(database, user.organisationId, params.id),
  handler: async ({ user, database, resource, body }) => {
    const { document } = await requireLatestVehicle(database, user.organisationId, resource.vehicleId);
    const checked = checkDraft({ ...body.document, id: resource.key }, document);
    if (checked.scenario === undefined) {
      throw problem("invalid_input", {
        errors: checked.messages
          .filter(({ severity }) => severity === "error")
          .map(({ path, message }) => ({ path, message })),
      });
    }
    const preview = previewDraft(checked.scenario, document, body.seed);
    if (preview.ok) return preview.value;
    throw problem("refused", { reason: preview.error.code, detail: preview.error.message });
  },
});
