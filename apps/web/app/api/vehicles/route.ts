import { newVehicleSchema } from "@/features/authoring/authoring-input";
import { teachers } from "@/server/auth/staff";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { createVehicle } from "@/server/services/vehicles/create-vehicle";

export const POST = withRoute({
  auth: teachers,
  body: newVehicleSchema,
  bodyLimitBytes: 2 * 1024 * 1024,
  rateLimit: { name: "new_vehicle", requests: 30, perSeconds: 60 },
  handler: async ({ user, database, body }) => {
    const created = await createVehicle(database, user, body);
    if (created.ok) return { id: created.value.id };
    throw problem("invalid_input", {
      detail: "The vehicle was not made. Correct these places and send it again.",
      errors: [...created.errors],
    });
  },
  audit: ({ answer, body }) => ({
    action: "vehicle.created",
    resourceType: "vehicle",
    resourceId: answer.id,
    detail: { start: body.start },
  }),
});
