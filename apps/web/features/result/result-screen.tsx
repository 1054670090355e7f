import { Caution } from "@/components/caution";
import { EmptyState } from "@/components/empty-state";
import { Tag } from "@/components/tag";
import { LogTable } from "@/features/bay/log-table";
import { createNames } from "@/features/bay/names";
import { papersOf } from "@/features/papers/papers-view";
import { LogPotentials } from "@/features/potentials/log-potentials";
import { LocalTime } from "@/features/time/local-time";
import { BeingGraded } from "./being-graded";
import { EvidenceSection } from "./evidence-section";
import { ReportSection } from "./report-section";
import type { ResultView, ShownGrade } from "./result-view";
import { RubricSection } from "./rubric-section";

/** Score, reasons, evidence, truth, report and log: everything on one sheet that prints. */
export function ResultScreen({
  attemptId,
  result,
}: {
  readonly attemptId: string;
  readonly result: ResultView;
}) {
  const { work } = result;
  const names = createNames(work);
  return (
    <div className="space-y-10">
      <p className="max-w-prose">
        {work.job.vehicleTitle}, {work.job.systemTitle}. The customer says: “{work.job.complaint}”
      </p>
      {result.kind === "kept_back" ? (
        <EmptyState title="Your report is handed in">
          {result.revealsAt === null ? (
            "The result goes to the people who gave you this job. Ask them about it."
          ) : (
            <>
              The result can be seen here from <LocalTime at={result.revealsAt} />, when the job closes for
              everybody.
            </>
          )}
        </EmptyState>
      ) : result.kind === "being_graded" ? (
        <BeingGraded progress={result.progress} />
      ) : (
        <>
          <Total grade={result.grade} />
          <Truth grade={result.grade} />
          <RubricSection lines={result.grade.lines} />
          <EvidenceSection result={result} names={names} />
        </>
      )}
      {work.report !== null && <ReportSection report={work.report} names={names} />}
      {result.kind === "shown" && <LogPotentials papers={papersOf("attempts", attemptId)} work={work} />}
      <section aria-labelledby="result-log">
        <h2 id="result-log" className="mb-2">
          The whole log
        </h2>
        <LogTable log={work.log} names={names} />
      </section>
      {result.kind === "shown" && result.cautions.length > 0 && (
        <Caution title="At a real car">
          <ul className="list-disc space-y-1 pl-5">
            {result.cautions.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          <p>This was simulated practice. It does not certify anyone.</p>
        </Caution>
      )}
    </div>
  );
}

function Total({ grade }: { readonly grade: ShownGrade }) {
  const { score, passMark, passed, awaitsPerson, decision } = grade;
  return (
    <section aria-labelledby="result-total" className="keep-together border-2 border-ink p-4 sm:p-6">
      <h2 id="result-total" className="sr-only">
        Total
      </h2>
      <div className="flex flex-wrap items-end gap-x-8 gap-y-3">
        <p className="font-mono leading-none">
          <span className="text-6xl font-semibold" data-testid="score">
            {score.toFixed(1)}
          </span>
          <span className="text-2xl text-ink-soft"> of 100</span>
        </p>
        <p className="text-lg">Pass mark {passMark}</p>
        <Tag state={passed ? "done" : "attention"}>{passed ? "Passed" : "Not passed"}</Tag>
        {awaitsPerson && <Tag state="waiting">Part waits for a person</Tag>}
      </div>
      {decision !== null && (
        <p className="mt-3">
          Set by {decision.by} (worked out: {decision.computedScore.toFixed(1)}): “{decision.reason}”
        </p>
      )}
    </section>
  );
}

function Truth({ grade }: { readonly grade: ShownGrade }) {
  return (
    <section aria-labelledby="result-truth" className="max-w-prose">
      <h2 id="result-truth" className="mb-1">
        What was really wrong
      </h2>
      {grade.truth.map((fault) => (
        <p key={fault.title}>
          <strong>{fault.title}.</strong> {fault.correction}
        </p>
      ))}
    </section>
  );
}
