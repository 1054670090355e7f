import { hirers } from "@/server/auth/staff";
import { idParams } from "@/server/http/ids";
import { problem } from "@/server/http/problem";
import { withRoute } from "@/server/http/with-route";

export const POST = withRoute({
  auth: hirers,
  params: idParams,
  resource: async ({ user, database, params }) => {
    const { organisationId } = user;
    const found = await database.invitations.find({
      organisationId,
      invitationId: params.id,
      now: new Date(),
    });
    return found ?? undefined;
  },
  handler: async ({ user, database, resource }) => {
    const { organisationId } = user;
    const revoked = await database.invitations.revoke({
      organisationId,
      invitationId: resource.id,
      revokedAt: new Date(),
    });
    if (revoked) return;
    throw problem("refused", {
      reason: "not_waiting",
      detail: "The link has been used or withdrawn already.",
    });
  },
  audit: ({ resource }) => ({
    action: "invitation.revoked",
    resourceType: "invitation",
    resourceId: resource.id,
    detail: { email: resource.email },
  }),
});
