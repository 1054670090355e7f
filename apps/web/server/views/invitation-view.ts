import "server-only";
import type { Database } from "@probeworthy/database";
import { type InvitationView, invitationViewSchema } from "@/features/invitation/invitation-view";

/** Looking does not use the link up. */
export async function loadInvitation(
  database: Database,
  token: string,
  now: Date,
): Promise<InvitationView | undefined> {
  const found = await database.invitations.findByToken({ token, now });
  if (found === null) return undefined;
  const { organisationName, name, email, assignmentTitle, state, expiresAt } = found;
  return invitationViewSchema.parse({
    organisationName,
    name,
    email,
    jobTitle: assignmentTitle,
    state,
    expiresAt: expiresAt.toISOString(),
  });
}
