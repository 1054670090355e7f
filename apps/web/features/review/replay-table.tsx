import type { GradeResult, LearnerView } from "@probeworthy/evaluation";
import clsx from "clsx";
import { Icon } from "@/components/icon";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import {
  describeCommand,
  describeContext,
  describeObservation,
  formatShopTime,
} from "@/features/bay/log-words";
import type { Names } from "@/features/bay/names";
import { formatPrediction } from "@/features/bay/reading-words";
import type { ReviewView } from "./review-view";
import { RuledOut } from "./ruled-out";
import type { Standing } from "./standing";

export interface ReplayTableProps {
  readonly log: LearnerView["log"];
  readonly names: Names;
  readonly evidence: GradeResult["evidence"] | undefined;
  readonly remarks: ReviewView["secret"]["remarks"];
  readonly steps: ReadonlyMap<number, Standing>;
  readonly current: number;
}

/** The whole log with what each line proved; the reasons of the rubric point here. */
export function ReplayTable({ log, names, evidence, remarks, steps, current }: ReplayTableProps) {
  const titles = new Map(evidence?.candidates.map(({ id, title }) => [id, title]));
  return (
    <Table caption="Log of the job with what each line proved" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell numeric>Line</HeaderCell>
          <HeaderCell numeric>Shop time</HeaderCell>
          <HeaderCell>What was done</HeaderCell>
          <HeaderCell>What was seen</HeaderCell>
          <HeaderCell>Ruled out</HeaderCell>
          <HeaderCell numeric>Left</HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {log.map((line) => {
          const step = steps.get(line.sequence);
          return (
            <TableRow
              key={line.sequence}
              id={`line-${line.sequence}`}
              className={clsx("scroll-mt-28 target:bg-panel", line.sequence === current && "bg-panel")}
            >
              <Cell numeric>{line.sequence}</Cell>
              <Cell numeric className="whitespace-nowrap">
                {formatShopTime(line.elapsedSeconds)}
              </Cell>
              <Cell>
                {describeCommand(line.command, names)}
                {remarks
                  .filter((remark) => remark.line === line.sequence)
                  .map((remark) => (
                    <span key={remark.text} className="mt-1 flex items-start gap-1.5 font-semibold">
                      <Icon name="warning" className="mt-1 size-4" />
                      {remark.text}
                    </span>
                  ))}
              </Cell>
              <Cell>
                {describeObservation(line, names)}
                <Circumstances line={line} names={names} />
              </Cell>
              <Cell className="min-w-40 text-sm">
                {step?.weighed !== true ? (
                  ""
                ) : step.ruledOut.length === 0 ? (
                  <span className="text-ink-soft">nothing</span>
                ) : (
                  <RuledOut titles={step.ruledOut.map((id) => titles.get(id) ?? id)} />
                )}
              </Cell>
              <Cell numeric>{step?.weighed === true ? step.standing.length : ""}</Cell>
            </TableRow>
          );
        })}
      </TableBody>
    </Table>
  );
}

function Circumstances({
  line,
  names,
}: {
  readonly line: LearnerView["log"][number];
  readonly names: Names;
}) {
  const { observation } = line;
  if (observation.kind === "bench" || observation.kind === "submitted") return null;
  return (
    <>
      {observation.kind === "reading" && observation.prediction !== undefined && (
        <span className="block text-sm">
          Expected {formatPrediction(observation.prediction, observation.reading.function)}
        </span>
      )}
      {observation.kind !== "noticed" && (
        <span className="block text-sm text-ink-soft">{describeContext(observation.context, names)}</span>
      )}
    </>
  );
}
