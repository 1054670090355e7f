import { personChangeSchema } from "@/features/people/person-input";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { changePerson } from "@/server/services/people/change-person";

export const PATCH = withRoute({
  auth: ["administrator"],
  params: idParams,
  body: personChangeSchema,
  resource: async ({ user, database, params }) =>
    (await database.users.find({ organisationId: user.organisationId, userId: params.id })) ?? undefined,
  handler: async ({ user, database, resource, body }) => {
    const who = { organisationId: user.organisationId, userId: resource.id };
    const done = await changePerson(database, who, body, new Date());
    if (done.ok) return;
    throw problem("refused", { reason: done.error.code, detail: done.error.message });
  },
  audit: ({ resource, body }) => ({
    action: "role" in body ? "person.role_changed" : body.disabled ? "person.disabled" : "person.enabled",
    resourceType: "person",
    resourceId: resource.id,
    detail: { email: resource.email, ...("role" in body ? { before: resource.role, after: body.role } : {}) },
  }),
});
