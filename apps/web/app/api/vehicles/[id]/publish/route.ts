import { publishVehicleSchema } from "@/features/authoring/authoring-input";
import { teachers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { findOwnVehicle } from "@/server/services/vehicles/find-vehicle";
import { publishVehicle } from "@/server/services/vehicles/publish-vehicle";

/** Makes the draft the next version, which never changes again. */
export const POST = withRoute({
  auth: teachers,
  params: idParams,
  body: publishVehicleSchema,
  resource: async ({ user, database, params }) => findOwnVehicle(database, user.organisationId, params.id),
  handler: async ({ user, database, resource, body }) => {
    const done = await publishVehicle(database, user, resource, new Date(body.seenAt));
    if (done.ok) return done.value;
    if (done.error.code === "changed")
      throw problem("conflict", {
        reason: "draft_changed",
        detail: "This vehicle was changed on another screen. Nothing was published.",
      });
    throw problem("refused", {
      reason: "incomplete",
      detail: "These places keep the vehicle from being published.",
      errors: done.error.messages.map(({ path, message }) => ({ path, message })),
    });
  },
  audit: ({ resource, answer }) => ({
    action: "vehicle.published",
    resourceType: "vehicle",
    resourceId: resource.id,
    detail: { number: answer.number },
  }),
});
