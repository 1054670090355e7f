import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { replacePassword } from "@/server/services/people/change-person";

/** A new first password, answered once. */
export const POST = withRoute({
  auth: ["administrator"],
  params: idParams,
  rateLimit: { name: "replace_password", requests: 60, perSeconds: 3600 },
  resource: async ({ user, database, params }) =>
    (await database.users.find({ organisationId: user.organisationId, userId: params.id })) ?? undefined,
  handler: async ({ user, database, resource }) => {
    const who = { organisationId: user.organisationId, userId: resource.id };
    const done = await replacePassword(database, who);
    if (done.ok) return done.value;
    throw problem("refused", { reason: done.error.code, detail: done.error.message });
  },
  audit: ({ resource }) => ({
    action: "person.password_replaced",
    resourceType: "person",
    resourceId: resource.id,
    detail: { email: resource.email },
  }),
});
