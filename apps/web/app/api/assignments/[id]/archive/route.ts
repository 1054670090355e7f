import { teachers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";
import { findTaughtClass } from "@/server/services/access";

/** Takes work off the class's list; what was handed in stays. */
export const POST = withRoute({
  auth: teachers,
  params: idParams,
  resource: async ({ user, database, params }) => {
    const { organisationId } = user;
    const assignment = await database.assignments.get({ organisationId, assignmentId: params.id });
    if (assignment?.classId == null || assignment.archivedAt !== null) return undefined;
    const taught = await findTaughtClass(database, user, assignment.classId);
    return taught === undefined ? undefined : assignment;
  },
  handler: async ({ user, database, resource }) => {
    await database.assignments.archive({
      organisationId: user.organisationId,
      assignmentId: resource.id,
      archivedAt: new Date(),
    });
  },
  audit: ({ resource }) => ({
    action: "assignment.archived",
    resourceType: "assignment",
    resourceId: resource.id,
    detail: { title: resource.title },
  }),
});
