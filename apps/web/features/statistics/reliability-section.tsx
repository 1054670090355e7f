import { CoefficientFigure, decimals } from "./figures";
import type { StatisticsView } from "./statistics-view";

export function ReliabilitySection({ reliability }: { readonly reliability: StatisticsView["reliability"] }) {
  const { alpha, scale, jointItems, complete, incomplete } = reliability;
  return (
    <section aria-labelledby="reliability-heading" className="space-y-3">
      <h2 id="reliability-heading" className="text-xl font-semibold">
        Reliability
      </h2>
      <p className="max-w-prose">
        Cronbach’s alpha (KR-20) of the number of right causes: <CoefficientFigure coefficient={alpha} />
      </p>
      {scale !== null && (
        <p className="max-w-prose">
          On average <span className="font-mono">{decimals(scale.mean)}</span> of {scale.items} causes are
          right (standard deviation <span className="font-mono">{decimals(scale.standardDeviation)}</span>).
          One learner’s number is good to about ±
          <span className="font-mono">{decimals(scale.standardError)}</span>, the standard error of
          measurement; both are worked out with N − 1.
        </p>
      )}
      <p className="max-w-prose text-sm text-ink-soft">
        Looked at together: {jointItems} {jointItems === 1 ? "assignment" : "assignments"} and the{" "}
        {complete === 1 ? "1 learner" : `${complete} learners`} who handed in all of them; {incomplete} handed
        in only some. An assignment that fewer than ten have handed in waits as long as two others have more.
      </p>
    </section>
  );
}
