import Link from "next/link";
import { notFound } from "next/navigation";
import { buttonClass } from "@/components/button-class";
import { EmptyState } from "@/components/empty-state";
import { CandidateResult } from "@/features/candidates/candidate-result";
import { candidateStateWords } from "@/features/candidates/candidates-view";
import { PrintButton } from "@/features/result/print-button";
import { SheetPage } from "@/features/shell/sheet-page";
import { LocalTime } from "@/features/time/local-time";
import { requireUser } from "@/server/auth/require-user";
import { hirers } from "@/server/auth/staff";
import { database } from "@/server/database";
import { findCandidateAttempt, toLine } from "@/server/views/candidates-view";
import { loadReview } from "@/server/views/review-view";

export const metadata = { title: "Candidate" };

export default async function CandidatePage({ params }: { readonly params: Promise<{ id: string }> }) {
  const user = await requireUser(hirers);
  const { organisationId } = user;
  const { id } = await params;
  const store = await database();
  const now = new Date();
  const invitation = await store.invitations.find({ organisationId, invitationId: id, now });
  if (invitation === null || invitation.assignmentId === null) notFound();
  const attempt = await findCandidateAttempt(store, organisationId, invitation);
  const review = attempt === undefined ? undefined : await loadReview(store, organisationId, attempt, now);
  const line = toLine(invitation, attempt);
  const name = review?.learnerName ?? line.name;
  return (
    <SheetPage
      title={name}
      lead={line.title}
      above={
        <Link href="/candidates" className="link">
          All candidates
        </Link>
      }
      actions={
        attempt === undefined ? undefined : (
          <>
            <Link href={`/attempts/${attempt.id}/review`} className={buttonClass("quiet")}>
              Every step
            </Link>
            <PrintButton />
          </>
        )
      }
      entries={[
        { label: "Candidate", value: name },

        {
          label: "Handed in",
          value: review?.submittedAt == null ? "not yet" : <LocalTime at={review.submittedAt} />,
        },
        { label: "State", value: candidateStateWords[line.state] },
      ]}
    >
      {review === undefined || review.grade === null ? (
        <EmptyState title="No result yet">
          {attempt === undefined
            ? "The check has not been begun."
            : "The candidate is at work. The result stands here as soon as the report is handed in."}
        </EmptyState>
      ) : (
        <CandidateResult review={review} grade={review.grade} />
      )}
    </SheetPage>
  );
}
