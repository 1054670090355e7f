import type { LearnerView } from "@probeworthy/evaluation";
import { DefinitionList } from "@/components/definition-list";
import type { Names } from "@/features/bay/names";
import { causeKindTitles, correctionTitles } from "@/features/bay/report-words";

export interface ReportSectionProps {
  readonly report: NonNullable<LearnerView["report"]>;
  readonly names: Names;
  readonly heading?: string;
}

/** What was handed in, as it was written. */
export function ReportSection({ report, names, heading = "Your report" }: ReportSectionProps) {
  const { concern, cause, correction } = report;
  const place = (id: string) => (id === "" ? "" : `, ${names.place(id)}`);
  return (
    <section aria-labelledby="result-report" className="max-w-4xl">
      <h2 id="result-report" className="mb-2">
        {heading}
      </h2>
      <DefinitionList
        items={[
          { term: "Concern", value: <p className="whitespace-pre-line">{concern}</p> },
          {
            term: "Cause",
            value: (
              <>
                <p className="font-semibold">
                  {causeKindTitles[cause.kind]}
                  {place(cause.place)}
                </p>
                <p className="whitespace-pre-line">{cause.explanation}</p>
              </>
            ),
          },
          {
            term: "Correction",
            value: (
              <>
                <p className="font-semibold">
                  {correctionTitles[correction.action]}
                  {place(correction.place)}
                </p>
                <p className="whitespace-pre-line">{correction.explanation}</p>
              </>
            ),
          },
        ]}
      />
    </section>
  );
}
