import { EmptyState } from "@/components/empty-state";
import { createNames } from "@/features/bay/names";
import { papersOf } from "@/features/papers/papers-view";
import { LogPotentials } from "@/features/potentials/log-potentials";
import { EvidencePicture } from "@/features/result/evidence-picture";
import { ReportSection } from "@/features/result/report-section";
import { RubricSection } from "@/features/result/rubric-section";
import { DecisionSection } from "./decision-section";
import { Replay } from "./replay";
import type { ReviewView } from "./review-view";
import { ScorePanel } from "./score-panel";
import { SecretSection } from "./secret-section";

/** Everything about one attempt for the person who judges it: score, truth, reasons, replay, decisions. */
export function ReviewScreen({ view }: { readonly view: ReviewView }) {
  const { work, grade } = view;
  const names = createNames(work);
  return (
    <div className="space-y-10">
      <p className="max-w-prose">The customer says: “{work.job.complaint}”</p>
      <div className="grid gap-8 lg:grid-cols-2">
        {grade === null ? (
          <EmptyState title="No grade yet">
            The report has not been handed in. The log below shows what has been done so far.
          </EmptyState>
        ) : (
          <ScorePanel grade={grade} decision={view.decisions[0]} />
        )}
        <SecretSection secret={view.secret} />
      </div>
      {work.report !== null && <ReportSection report={work.report} names={names} heading="The report" />}
      {grade !== null && <RubricSection lines={grade.lines} />}
      <Replay log={work.log} work={work} evidence={grade?.evidence} remarks={view.secret.remarks} />
      <LogPotentials papers={papersOf("attempts", view.attemptId)} work={work} />
      {grade !== null && grade.evidence.steps.length > 0 && (
        <section aria-labelledby="review-evidence" className="keep-together">
          <h2 id="review-evidence" className="mb-2">
            How the evidence narrowed
          </h2>
          <p className="mb-3 max-w-prose">
            The wider a bar, the more causes the readings up to that line still allow. The copper line is the
            true cause.
          </p>
          <EvidencePicture evidence={grade.evidence} />
        </section>
      )}
      {grade !== null && <DecisionSection view={view} grade={grade} />}
    </div>
  );
}
