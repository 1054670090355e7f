import { CandidateList } from "@/features/candidates/candidate-list";
import { InviteDialog } from "@/features/candidates/invite-dialog";
import { SheetPage } from "@/features/shell/sheet-page";
import { requireUser } from "@/server/auth/require-user";
import { hirers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { loadCandidates } from "@/server/views/candidates-view";

export const metadata = { title: "Candidates" };

export default async function CandidatesPage() {
  const user = await requireUser(hirers);
  const { candidates, checks } = await loadCandidates(await database(), user.organisationId, new Date());
  return (
    <SheetPage
      title="Candidates"
      lead="Invite somebody by a link that works once. They find a fault on a simulated car; you get one page."
      actions={<InviteDialog checks={checks} />}
      wide
      entries={[
        { label: "Name", value: user.name },
        { label: "Sheet", value: "Candidates" },
        { label: "Results", value: candidates.filter(({ state }) => state === "graded").length },
      ]}
    >
      <CandidateList candidates={candidates} />
    </SheetPage>
  );
}
