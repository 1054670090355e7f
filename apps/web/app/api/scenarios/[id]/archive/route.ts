import { staff } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";
import { findScenario } from "@/server/services/scenarios/find-scenario";

/** Takes a scenario off the list; work handed out from it goes on. */
export const POST = withRoute({
  auth: staff,
  params: idParams,
  resource: async ({ user, database, params }) => findScenario(database, user.organisationId, params.id),
  handler: async ({ user, database, resource }) => {
    await database.scenarios.archive({
      organisationId: user.organisationId,
      scenarioId: resource.id,
      archivedAt: new Date(),
    });
  },
  audit: ({ resource }) => ({
    action: "scenario.archived",
    resourceType: "scenario",
    resourceId: resource.id,
    detail: { title: resource.title },
  }),
});
