import type { LearnerView } from "@probeworthy/evaluation";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import {
  describeCommand,
  describeContext,
  describeObservation,
  formatShopTime,
  type LogLine,
} from "./log-words";
import type { Names } from "./names";
import { formatPrediction } from "./reading-words";

export interface LogTableProps {
  readonly log: LearnerView["log"];
  readonly names: Names;
  /** In the bay the newest line stands on top; on the result it reads from the start. */
  readonly newestFirst?: boolean;
}

/** Everything done and seen, line by line; reasons of the grade point here. */
export function LogTable({ log, names, newestFirst = false }: LogTableProps) {
  const lines = newestFirst ? [...log].reverse() : log;
  return (
    <Table caption="Log of the job" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell numeric>Line</HeaderCell>
          <HeaderCell numeric>Shop time</HeaderCell>
          <HeaderCell>What was done</HeaderCell>
          <HeaderCell>What was seen</HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {lines.map((line) => (
          <TableRow key={line.sequence} id={`line-${line.sequence}`} className="scroll-mt-28 target:bg-panel">
            <Cell numeric>{line.sequence}</Cell>
            <Cell numeric className="whitespace-nowrap">
              {formatShopTime(line.elapsedSeconds)}
            </Cell>
            <Cell>{describeCommand(line.command, names)}</Cell>
            <Cell>
              <p>{describeObservation(line, names)}</p>
              <Details line={line} names={names} />
            </Cell>
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}

function Details({ line, names }: { readonly line: LogLine; readonly names: Names }) {
  const { observation } = line;
  if (observation.kind === "bench" || observation.kind === "submitted") return null;
  const context = describeContext(observation.context, names);
  return (
    <>
      {observation.kind === "reading" && observation.prediction !== undefined && (
        <p className="text-sm">
          Expected {formatPrediction(observation.prediction, observation.reading.function)}
        </p>
      )}
      {observation.kind !== "noticed" && <p className="text-sm text-ink-soft">{context}</p>}
    </>
  );
}
