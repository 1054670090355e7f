import { drawDraftSchema } from "@/features/authoring/authoring-input";
import { teachers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";
import { drawDraft } from "@/server/services/vehicles/draw-draft";
import { findOwnVehicle } from "@/server/services/vehicles/find-vehicle";

/** The drawing of one system of the draft that is sent; nothing is kept. */
export const POST = withRoute({
  auth: teachers,
  params: idParams,
  body: drawDraftSchema,
  bodyLimitBytes: 4 * 1024 * 1024,
  rateLimit: { name: "draw_draft", requests: 120, perSeconds: 60 },
  resource: async ({ user, database, params }) => findOwnVehicle(database, user.organisationId, params.id),
  handler: async ({ body }) => drawDraft(body.document, body.systemId),
  audit: "nothing_written",
});
