import { newScenarioSchema } from "@/features/builder/draft-input";
import { staff } from "@/server/auth/staff";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { createScenario } from "@/server/services/scenarios/create-scenario";

export const POST = withRoute({
  auth: staff,
  body: newScenarioSchema,
  handler: async ({ user, database, body }) => {
    const created = await createScenario(database, user, body);
    if (created.ok) return created.value;
    throw problem("invalid_input", { errors: [created.error] });
  },
  audit: ({ answer, body }) => ({
    action: "scenario.created",
    resourceType: "scenario",
    resourceId: answer.id,
    detail: { title: body.title },
  }),
});
