import { assignmentInputSchema } from "@/features/assignments/assignment-input";
import { teachers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { findTaughtClass } from "@/server/services/access";

export const POST = withRoute({
  auth: teachers,
  params: idParams,
  body: assignmentInputSchema,
  resource: async ({ user, database, params }) => findTaughtClass(database, user, params.id),
  handler: async ({ user, database, resource, body }) => {
    const { opensAt, closesAt, ...terms } = body;
    const created = await database.assignments.create({
      organisationId: user.organisationId,
      createdById: user.userId,
      for: { classId: resource.id },
      ...terms,
      opensAt: opensAt === null ? null : new Date(opensAt),
      closesAt: closesAt === null ? null : new Date(closesAt),
    });
    if (created.ok) return { id: created.value.id };
    if (created.error.what === "scenario_version") {
      const message = "There is no such scenario any more. Load the page again and choose from the list.";
      throw problem("invalid_input", { errors: [{ path: "scenarioVersionId", message }] });
    }
    throw problem("not_found");
  },
  audit: ({ resource, answer, body }) => ({
    action: "assignment.created",
    resourceType: "assignment",
    resourceId: answer.id,
    detail: { classId: resource.id, title: body.title, scenarioVersionId: body.scenarioVersionId },
  }),
});
