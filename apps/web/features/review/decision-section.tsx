import { LocalTime } from "@/features/time/local-time";
import { OverrideForm } from "./override-form";
import type { ReviewedGrade, ReviewView } from "./review-view";

export interface DecisionSectionProps {
  readonly view: ReviewView;
  readonly grade: ReviewedGrade;
}

/** A person's say about the score, and everything that was ever decided or computed. */
export function DecisionSection({ view, grade }: DecisionSectionProps) {
  const stands = view.decisions[0] !== undefined && view.decisions[0].score !== null;
  return (
    <section aria-labelledby="review-decision" className="grid gap-8 lg:grid-cols-2">
      <div className="no-print space-y-4">
        <h2 id="review-decision">Confirm or change the score</h2>
        <OverrideForm attemptId={view.attemptId} score={grade.score} stands={stands} />
      </div>
      <div className="space-y-6">
        <div>
          <h3 className="mb-2">Decisions</h3>
          {view.decisions.length === 0 ? (
            <p className="text-ink-soft">Nobody has changed this score.</p>
          ) : (
            <ol className="border-t border-hairline">
              {view.decisions.map((decision) => (
                <li key={decision.id} className="border-b border-hairline py-2">
                  <p>
                    <strong>
                      {decision.score === null
                        ? "Decision taken back"
                        : `Set to ${decision.score.toFixed(1)}`}
                    </strong>{" "}
                    by {decision.byName}, <LocalTime at={decision.createdAt} />
                  </p>
                  <p className="whitespace-pre-line">“{decision.reason}”</p>
                </li>
              ))}
            </ol>
          )}
        </div>
        <div>
          <h3 className="mb-2">Computed grades</h3>
          <ol className="border-t border-hairline">
            {view.revisions.map((revision) => (
              <li key={revision.revision} className="border-b border-hairline py-2">
                Revision {revision.revision}: <span className="font-mono">{revision.score.toFixed(1)}</span>,
                engine {revision.engineVersion}, <LocalTime at={revision.createdAt} />
              </li>
            ))}
          </ol>
        </div>
      </div>
    </section>
  );
}
