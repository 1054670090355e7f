import Link from "next/link";
import { notFound } from "next/navigation";
import { PrintButton } from "@/features/result/print-button";
import { ReviewScreen } from "@/features/review/review-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { LocalTime } from "@/features/time/local-time";
import { requireUser } from "@/server/auth/require-user";
import { staff } from "@/server/auth/staff";
import { database } from "@/server/database";
import { findReviewableAttempt } from "@/server/services/access";
import { loadReview } from "@/server/views/review-view";

export const metadata = { title: "Review" };

const stateWords = {
  open: "Under way",
  submitted: "Handed in",
  graded: "Graded",
  abandoned: "Given up",
} as const;

export default async function ReviewPage({ params }: { readonly params: Promise<{ id: string }> }) {
  const user = await requireUser(staff);
  const { id } = await params;
  const store = await database();
  const attempt = await findReviewableAttempt(store, user, id);
  if (attempt === undefined) notFound();
  const view = await loadReview(store, user.organisationId, attempt, new Date());
  return (
    <SheetPage
      title={`${view.learnerName}: ${view.title}`}
      lead={`Attempt ${view.number}. ${view.work.job.vehicleTitle}, ${view.work.job.systemTitle}.`}
      above={
        <Link href={view.classId === null ? "/candidates" : `/classes/${view.classId}`} className="link">
          {view.classId === null ? "All candidates" : "Gradebook"}
        </Link>
      }
      actions={<PrintButton />}
      wide
      entries={[
        { label: "Job", value: view.title },
        { label: "Name", value: view.learnerName },

        {
          label: "Handed in",
          value: view.submittedAt === null ? "not yet" : <LocalTime at={view.submittedAt} />,
        },
        { label: "State", value: stateWords[view.status] },
      ]}
    >
      <ReviewScreen view={view} />
    </SheetPage>
  );
}
