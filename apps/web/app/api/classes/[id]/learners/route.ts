import { enrolInputSchema } from "@/features/classes/class-input";
import { teachers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { withRoute } from "@/server/http/with-route";
import { findTaughtClass } from "@/server/services/access";
import { enrolPeople } from "@/server/services/classes/enrol-people";

export const POST = withRoute({
  auth: teachers,
  params: idParams,
  body: enrolInputSchema,
  rateLimit: { name: "enrol_people", requests: 20, perSeconds: 60 },
  resource: async ({ user, database, params }) => findTaughtClass(database, user, params.id),
  handler: async ({ user, database, resource, body }) =>
    enrolPeople(database, {
      organisationId: user.organisationId,
      classId: resource.id,
      people: body.people,
    }),
  audit: ({ resource, answer }) => ({
    action: "class.people_enrolled",
    resourceType: "class",
    resourceId: resource.id,
    detail: { people: answer.people.map(({ email, outcome }) => ({ email, outcome })) },
  }),
});
