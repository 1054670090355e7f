import { teachers } from "@/server/auth/staff";
import { idParams, idSchema } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { findTaughtClass } from "@/server/services/access";

/** Takes a learner off the list; attempts and grades stay. */
export const DELETE = withRoute({
  auth: teachers,
  params: idParams.extend({ userId: idSchema }),
  resource: async ({ user, database, params }) => findTaughtClass(database, user, params.id),
  handler: async ({ user, database, params, resource }) => {
    const { organisationId } = user;
    const roster = await database.classes.roster({ organisationId, classId: resource.id });
    if (!roster?.some(({ userId }) => userId === params.userId)) throw problem("not_found");
    await database.classes.remove({ organisationId, classId: resource.id, userId: params.userId });
  },
  audit: ({ resource, params }) => ({
    action: "class.learner_removed",
    resourceType: "class",
    resourceId: resource.id,
    detail: { userId: params.userId },
  }),
});
