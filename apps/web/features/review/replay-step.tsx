"use client";

import type { GradeResult, LearnerView } from "@probeworthy/evaluation";
import { Button } from "@/components/button";
import { DefinitionList } from "@/components/definition-list";
import {
  describeCommand,
  describeContext,
  describeObservation,
  formatShopTime,
} from "@/features/bay/log-words";
import type { Names } from "@/features/bay/names";
import type { ReviewView } from "./review-view";
import { RuledOut } from "./ruled-out";
import type { Standing } from "./standing";

export interface ReplayStepProps {
  readonly log: LearnerView["log"];
  readonly names: Names;
  readonly evidence: GradeResult["evidence"] | undefined;
  readonly remarks: ReviewView["secret"]["remarks"];
  readonly sequence: number;
  readonly steps: ReadonlyMap<number, Standing>;
  readonly onMove: (sequence: number) => void;
}

/** One line of the log at a time, with the condition of the car and the causes left. */
export function ReplayStep({ log, names, evidence, remarks, sequence, steps, onMove }: ReplayStepProps) {
  const line = log.find((one) => one.sequence === sequence) ?? log[0];
  if (line === undefined) return null;
  const last = log.at(-1)?.sequence ?? 1;
  const titles = new Map(evidence?.candidates.map(({ id, title }) => [id, title]));
  const step = steps.get(line.sequence);
  const own = remarks.filter((remark) => remark.line === line.sequence);
  const { observation } = line;
  const context =
    observation.kind === "bench" || observation.kind === "submitted" ? undefined : observation.context;
  const seen = describeObservation(line, names);
  return (
    <div className="no-print border border-edge">
      <div className="flex flex-wrap items-center gap-3 border-b border-hairline p-3">
        <Button disabled={sequence <= 1} onClick={() => onMove(sequence - 1)}>
          Back
        </Button>
        <Button disabled={sequence >= last} onClick={() => onMove(sequence + 1)}>
          Next
        </Button>
        <input
          type="range"
          aria-label="Line of the log"
          min={1}
          max={last}
          value={sequence}
          aria-valuetext={`Line ${sequence} of ${last}, ${formatShopTime(line.elapsedSeconds)}`}
          onChange={(event) => onMove(Number(event.target.value))}
          className="h-11 min-w-40 flex-1 accent-copper-fill"
        />
        <p className="font-mono whitespace-nowrap">
          line {line.sequence} of {last}, {formatShopTime(line.elapsedSeconds)}
        </p>
      </div>
      <div className="grid min-h-56 gap-x-10 gap-y-4 p-4 lg:grid-cols-2">
        <div aria-live="polite">
          <DefinitionList
            items={[
              { term: "Done", value: <strong>{describeCommand(line.command, names)}</strong> },
              { term: "Seen", value: seen === "" ? "nothing of the car" : seen },
              ...(context === undefined ? [] : [{ term: "Car", value: describeContext(context, names) }]),
              ...own.map((remark) => ({
                key: remark.text,
                term: "Remark",
                value: <strong>{remark.text}</strong>,
              })),
            ]}
          />
        </div>
        {step !== undefined && (
          <div>
            <h3 className="mb-1">
              {step.standing.length} of {titles.size} causes still stand
            </h3>
            {step.ruledOut.length > 0 && (
              <div className="mb-2 text-sm">
                <p className="label-small">Ruled out here</p>
                <RuledOut titles={step.ruledOut.map((id) => titles.get(id) ?? id)} />
              </div>
            )}
            {step.weighed && step.ruledOut.length === 0 && (
              <p className="mb-2 text-sm text-ink-soft">This look could not tell the causes left apart.</p>
            )}
            <details open={step.standing.length <= 8}>
              <summary className="min-h-6 cursor-pointer">Which</summary>
              <ul className="mt-1 list-disc pl-5">
                {step.standing.map((id) => (
                  <li key={id}>
                    {titles.get(id) ?? id}
                    {id === evidence?.truth && " (the true one)"}
                  </li>
                ))}
              </ul>
            </details>
          </div>
        )}
      </div>
    </div>
  );
}
