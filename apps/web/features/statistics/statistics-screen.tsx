import { buttonClass } from "@/components/button-class";
import { EmptyState } from "@/components/empty-state";
import { ConfusionSection } from "./confusion-section";
import { ItemsSection } from "./items-section";
import { ReliabilitySection } from "./reliability-section";
import type { StatisticsView } from "./statistics-view";

export function StatisticsScreen({ view }: { readonly view: StatisticsView }) {
  if (view.attempts === 0) {
    return (
      <EmptyState title="Nothing to count yet">
        As soon as learners of this class hand in work, it shows here how hard each assignment is and which
        faults are taken for which.
      </EmptyState>
    );
  }
  const file = `/api/classes/${view.classId}/statistics`;
  return (
    <div className="space-y-10">
      <div className="flex flex-wrap items-start justify-between gap-x-8 gap-y-3">
        <p className="max-w-prose">
          Only each learner’s first attempt counts, because at a later one they know what the first was about.
          The cause is judged as in grading, today’s rules for all.
          {view.withoutReport > 0 &&
            ` ${view.withoutReport} closed without a report: counted as not found, and in no table of kinds.`}
        </p>
        <p className="no-print flex flex-wrap gap-3">
          <a href={file} download className={buttonClass("quiet")}>
            Assignments as CSV
          </a>
          <a href={`${file}?table=confusion`} download className={buttonClass("quiet")}>
            Kinds as CSV
          </a>
        </p>
      </div>
      <ItemsSection items={view.items} />
      <ReliabilitySection reliability={view.reliability} />
      <ConfusionSection confusion={view.confusion} />
    </div>
  );
}
