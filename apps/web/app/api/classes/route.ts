import { classInputSchema } from "@/features/classes/class-input";
import { teachers } from "@/server/auth/staff";
import { withRoute } from "@/server/http/with-route";

export const POST = withRoute({
  auth: teachers,
  body: classInputSchema,
  handler: async ({ user, database, body }) => {
    const { organisationId, userId } = user;
    const created = await database.classes.create({ organisationId, ...body, instructorIds: [userId] });
    if (!created.ok) throw new Error("a signed-in person is not a member of their organisation");
    return { id: created.value.id };
  },
  audit: ({ answer, body }) => ({
    action: "class.created",
    resourceType: "class",
    resourceId: answer.id,
    detail: body,
  }),
});
