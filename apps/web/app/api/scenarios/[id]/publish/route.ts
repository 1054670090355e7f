import { publishSchema } from "@/features/builder/draft-input";
import { staff } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { findScenario } from "@/server/services/scenarios/find-scenario";
import { publishScenario } from "@/server/services/scenarios/publish-scenario";

export const POST = withRoute({
  auth: staff,
  params: idParams,
  body: publishSchema,
  resource: async ({ user, database, params }) => findScenario(database, user.organisationId, params.id),
  handler: async ({ user, database, resource, body }) => {
    if (resource.updatedAt.getTime() !== Date.parse(body.seenAt)) {
      throw problem("conflict", {
        reason: "draft_changed",
        detail: "This scenario was changed on another screen. Load it again before you publish it.",
      });
    }
    const published = await publishScenario(database, user, resource);
    if (published.ok) return published.value;
    if (published.error.code === "no_draft") {
      throw problem("refused", { reason: "no_draft", detail: "Nothing has changed since the last version." });
    }
    throw problem("invalid_input", {
      errors: published.error.messages
        .filter(({ severity }) => severity === "error")
        .map(({ path, message }) => ({ path, message })),
    });
  },
  audit: ({ resource, answer }) => ({
    action: "scenario.published",
    resourceType: "scenario",
    resourceId: resource.id,
    detail: { title: resource.title, number: answer.number },
  }),
});
