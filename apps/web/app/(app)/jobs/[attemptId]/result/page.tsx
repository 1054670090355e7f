import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import { PrintButton } from "@/features/result/print-button";
import { ResultScreen } from "@/features/result/result-screen";
import { SheetPage } from "@/features/shell/sheet-page";
import { LocalTime } from "@/features/time/local-time";
import { requireUser } from "@/server/auth/require-user";
import { database } from "@/server/database";
import { loadResult } from "@/server/views/result-view";

export const metadata = { title: "Result" };

export default async function ResultPage({ params }: { readonly params: Promise<{ attemptId: string }> }) {
  const user = await requireUser(["learner"]);
  const { attemptId } = await params;
  const answer = await loadResult(await database(), user, attemptId, new Date());
  if (answer.kind === "unknown") notFound();
  if (answer.kind === "open") redirect(`/jobs/${attemptId}`);
  const { view } = answer;
  return (
    <SheetPage
      title={`Result: ${view.work.job.title}`}
      above={
        <Link href="/jobs" className="link">
          All jobs
        </Link>
      }
      actions={<PrintButton />}
      wide
      entries={[
        { label: "Job", value: view.work.job.title },
        { label: "Name", value: user.name },
        { label: "Attempt", value: view.attemptNumber },
        { label: "Handed in", value: <LocalTime at={view.submittedAt} /> },
        { label: "State", value: view.kind === "shown" ? "Result" : "Handed in" },
      ]}
    >
      <ResultScreen attemptId={attemptId} result={view} />
    </SheetPage>
  );
}
