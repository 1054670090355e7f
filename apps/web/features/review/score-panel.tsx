import { Tag } from "@/components/tag";
import { proofWords } from "./proof-words";
import type { ReviewedGrade, ReviewView } from "./review-view";

export interface ScorePanelProps {
  readonly grade: ReviewedGrade;
  readonly decision: ReviewView["decisions"][number] | undefined;
}

export function ScorePanel({ grade, decision }: ScorePanelProps) {
  const { score, computedScore, passMark, passed, awaitsPerson, evidence } = grade;
  const named = evidence.candidates.find(({ id }) => id === evidence.named)?.title;
  const left = evidence.steps.at(-1)?.standing.length ?? evidence.candidates.length;
  return (
    <section
      aria-labelledby="review-score"
      className="keep-together self-start border-2 border-ink p-4 sm:p-6"
    >
      <h2 id="review-score" className="sr-only">
        Score
      </h2>
      <div className="flex flex-wrap items-end gap-x-6 gap-y-3">
        <p className="font-mono leading-none">
          <span className="text-6xl font-semibold" data-testid="score">
            {score.toFixed(1)}
          </span>
          <span className="text-2xl text-ink-soft"> of 100</span>
        </p>
        <p className="text-lg">Pass mark {passMark}</p>
        <Tag state={passed ? "done" : "attention"}>{passed ? "Passed" : "Not passed"}</Tag>
        {awaitsPerson && <Tag state="waiting">Report to read</Tag>}
      </div>
      {decision !== undefined && decision.score !== null && (
        <p className="mt-3">
          Set by {decision.byName}; worked out from the log: {computedScore.toFixed(1)}.
        </p>
      )}
      <p className="mt-3">
        {named === undefined ? "The report names none of the causes that were weighed." : `Named: ${named}.`}{" "}
        {proofWords(evidence.proven, left, evidence.candidates.length)}
      </p>
    </section>
  );
}
