import { InvitationScreen } from "@/features/invitation/invitation-screen";
import { PlainSheet } from "@/features/shell/plain-sheet";
import { currentUser } from "@/server/auth/session";
import { database } from "@/server/database";
import { loadInvitation } from "@/server/views/invitation-view";

export const metadata = { title: "Invitation" };

export default async function InvitationPage({ params }: { readonly params: Promise<{ token: string }> }) {
  const { token } = await params;
  const invitation = await loadInvitation(await database(), token, new Date());
  const user = await currentUser();
  return (
    <PlainSheet
      entries={[
        { label: "From", value: invitation?.organisationName ?? "–" },
        { label: "Sheet", value: "Invitation" },
        { label: "State", value: invitation?.state ?? "unknown" },
      ]}
    >
      <InvitationScreen
        token={token}
        invitation={invitation}
        signedInAs={user?.email === invitation?.email ? user?.name : undefined}
      />
    </PlainSheet>
  );
}
