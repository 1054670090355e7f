import { hashPassword } from "@probeworthy/database";
import { personInputSchema } from "@/features/people/person-input";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";
import { makeFirstPassword } from "@/server/services/first-password";

export const POST = withRoute({
  auth: ["administrator"],
  body: personInputSchema,
  rateLimit: { name: "add_person", requests: 120, perSeconds: 3600 },
  handler: async ({ user, database, body }) => {
    const password = makeFirstPassword();
    const created = await database.users.create({
      organisationId: user.organisationId,
      ...body,
      passwordHash: await hashPassword(password),
    });
    if (created.ok) return { id: created.value.id, password };
    const message = "This address cannot be added: it has an account already.";
    throw problem("invalid_input", { errors: [{ path: "email", message }] });
  },
  audit: ({ answer, body }) => ({
    action: "person.added",
    resourceType: "person",
    resourceId: answer.id,
    detail: { email: body.email, role: body.role },
  }),
});
