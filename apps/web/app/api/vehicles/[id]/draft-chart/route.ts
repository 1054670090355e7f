import { chartDraftSchema } from "@/features/authoring/authoring-input";
import { teachers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";
import { chartDraft } from "@/server/services/vehicles/chart-draft";
import { findOwnVehicle } from "@/server/services/vehicles/find-vehicle";

/** A chart measured on the draft that is sent; nothing is kept. */
export const POST = withRoute({
  auth: teachers,
  params: idParams,
  body: chartDraftSchema,
  bodyLimitBytes: 4 * 1024 * 1024,
  rateLimit: { name: "chart_draft", requests: 120, perSeconds: 60 },
  resource: async ({ user, database, params }) => findOwnVehicle(database, user.organisationId, params.id),
  handler: async ({ body }) => chartDraft(body.document, body.systemId, body.csv),
  audit: "nothing_written",
});
