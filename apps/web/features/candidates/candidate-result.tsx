import { Tag } from "@/components/tag";
import { describeCommand, describeObservation, formatShopTime } from "@/features/bay/log-words";
import { createNames, type Names } from "@/features/bay/names";
import { causeKindTitles, correctionTitles } from "@/features/bay/report-words";
import { proofWords } from "@/features/review/proof-words";
import type { ReviewedGrade, ReviewView } from "@/features/review/review-view";

export interface CandidateResultProps {
  readonly review: ReviewView;
  readonly grade: ReviewedGrade;
}

/** One page that can be handed round and filed: score, what was wrong, what was found, and the evidence for it. */
export function CandidateResult({ review, grade }: CandidateResultProps) {
  const names = createNames(review.work);
  return (
    <div className="space-y-6 print:space-y-2 print:text-[9pt] print:leading-tight">
      <Verdict review={review} grade={grade} />
      <div className="grid gap-x-10 gap-y-6 lg:grid-cols-2 print:grid-cols-2 print:gap-x-6 print:gap-y-2">
        <Found review={review} grade={grade} names={names} />
        <Lines grade={grade} />
      </div>
      <Evidence review={review} grade={grade} names={names} />
      <p className="border-t border-hairline pt-3 text-sm text-ink-soft">
        Graded from the complete log of {review.work.log.length} steps by the same rules for everybody; every
        step can be replayed. Simulated practice does not certify anyone: weigh it with what you see at a real
        car.
      </p>
    </div>
  );
}

function Verdict({ review, grade }: CandidateResultProps) {
  const { limits } = review.work;
  const decision = review.decisions[0];
  return (
    <section
      aria-labelledby="candidate-score"
      className="keep-together border-2 border-ink p-4 sm:p-6 print:p-3"
    >
      <h2 id="candidate-score" className="sr-only">
        Score
      </h2>
      <div className="flex flex-wrap items-end gap-x-8 gap-y-3">
        <p className="font-mono leading-none">
          <span className="text-6xl font-semibold print:text-4xl" data-testid="score">
            {grade.score.toFixed(1)}
          </span>
          <span className="text-2xl text-ink-soft"> of 100</span>
        </p>
        <p className="text-lg">Pass mark {grade.passMark}</p>
        <Tag state={grade.passed ? "done" : "attention"}>{grade.passed ? "Passed" : "Not passed"}</Tag>
        {grade.awaitsPerson && <Tag state="waiting">Report to read</Tag>}
        <p>
          {formatShopTime(limits.shopSeconds)} of shop time (of {formatShopTime(limits.shopSecondsAllowed)}),{" "}
          {limits.actions} actions
        </p>
      </div>
      {decision !== undefined && decision.score !== null && (
        <p className="mt-3">
          Set by {decision.byName} (worked out: {grade.computedScore.toFixed(1)}): “{decision.reason}”
        </p>
      )}
    </section>
  );
}

function Found({ review, grade, names }: CandidateResultProps & { readonly names: Names }) {
  const { report, job } = review.work;
  return (
    <section aria-labelledby="candidate-found" className="space-y-3 print:space-y-1.5">
      <h2 id="candidate-found" className="print:text-[11pt]">
        The job and what was found
      </h2>
      <p>
        {job.vehicleTitle}, {job.systemTitle}. The customer says: “{job.complaint}”
      </p>
      <p>
        <strong>Really wrong:</strong> {grade.truth.map(({ title }) => title).join("; ") || "nothing"}
      </p>
      {report !== null && (
        <>
          <p>
            <strong>Named cause:</strong> {causeKindTitles[report.cause.kind]}
            {report.cause.place === "" ? "" : `, ${names.place(report.cause.place)}`}.{" "}
            {report.cause.explanation}
          </p>
          <p>
            <strong>Correction:</strong> {correctionTitles[report.correction.action]}
            {report.correction.place === "" ? "" : `, ${names.place(report.correction.place)}`}.{" "}
            {report.correction.explanation}
          </p>
        </>
      )}
    </section>
  );
}

function Lines({ grade }: { readonly grade: ReviewedGrade }) {
  return (
    <section aria-labelledby="candidate-lines">
      <h2 id="candidate-lines" className="mb-2 print:mb-1 print:text-[11pt]">
        Points
      </h2>
      <ul className="border-t border-ink">
        {grade.lines
          .filter(({ maximum }) => maximum > 0)
          .map((line) => (
            <li key={line.line} className="keep-together border-b border-hairline py-2 print:py-1">
              <p className="flex justify-between gap-4">
                <span className="font-semibold">{line.title}</span>
                <span className="font-mono whitespace-nowrap">
                  {line.points.toFixed(1)} of {line.maximum.toFixed(0)}
                </span>
              </p>
              {line.reasons
                .filter(({ effect }) => effect !== 0)
                .slice(0, 3)
                .map((reason, index) => (
                  <p
                    key={reason.text}
                    className={index < 2 ? "text-sm print:text-[8.5pt]" : "text-sm print:hidden"}
                  >
                    <span aria-hidden="true" className="font-mono font-semibold">
                      {reason.effect > 0 ? "+ " : "− "}
                    </span>
                    <span className="sr-only">{reason.effect > 0 ? "Earned: " : "Lost: "}</span>
                    {reason.text}
                  </p>
                ))}
            </li>
          ))}
      </ul>
    </section>
  );
}

/** More than these do not fit on the page beside everything else. */
const printedSteps = 10;

/** The looks that ruled something out; the rest of the log told nothing new. */
function Evidence({ review, grade, names }: CandidateResultProps & { readonly names: Names }) {
  const { evidence } = grade;
  const lines = new Map(review.work.log.map((line) => [line.sequence, line]));
  const telling = evidence.steps.filter(({ ruledOut }) => ruledOut.length > 0);
  const left = evidence.steps.at(-1)?.standing ?? evidence.candidates.map(({ id }) => id);
  return (
    <section aria-labelledby="candidate-evidence">
      <h2 id="candidate-evidence" className="print:text-[11pt]">
        What the readings proved
      </h2>
      <p className="mb-2 print:mb-1">
        {evidence.candidates.length} causes were possible at hand-over, {left.length}{" "}
        {left.length === 1 ? "was" : "were"} left at the end.{" "}
        {proofWords(evidence.proven, left.length, evidence.candidates.length)}
      </p>
      <ul className="border-t border-ink">
        {telling.map((step, index) => {
          const line = lines.get(step.line);
          return (
            <li
              key={step.line}
              className={`keep-together grid grid-cols-[4.5rem_1fr_8rem] gap-4 border-b border-hairline py-1.5 print:py-0.5 ${index < printedSteps ? "" : "print:hidden"}`}
            >
              <span className="font-mono">line {step.line}</span>
              <span className="line-clamp-3 print:line-clamp-1">
                {line === undefined
                  ? ""
                  : `${describeCommand(line.command, names)}. ${describeObservation(line, names)}`}
              </span>
              <span className="text-right font-mono whitespace-nowrap">
                −{step.ruledOut.length}, {step.standing.length} left
              </span>
            </li>
          );
        })}
        {telling.length > printedSteps && (
          <li className="hidden py-0.5 print:block">and {telling.length - printedSteps} more, on screen</li>
        )}
        {telling.length === 0 && <li className="py-2 text-ink-soft">No look ruled anything out.</li>}
      </ul>
    </section>
  );
}
