import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { describeCommand } from "@/features/bay/log-words";
import type { Names } from "@/features/bay/names";
import { EvidencePicture } from "./evidence-picture";
import { LineLinks } from "./line-links";
import type { ShownResult } from "./result-view";

export interface EvidenceSectionProps {
  readonly result: ShownResult;
  readonly names: Names;
}

/** How the readings narrowed it down: the picture, and the same as a table. */
export function EvidenceSection({ result, names }: EvidenceSectionProps) {
  const { evidence } = result.grade;
  const titles = new Map(evidence.candidates.map((candidate) => [candidate.id, candidate.title]));
  const title = (id: string) => titles.get(id) ?? id;
  const commands = new Map(result.work.log.map((line) => [line.sequence, line.command]));
  const last = evidence.steps.at(-1)?.standing ?? evidence.candidates.map((candidate) => candidate.id);
  return (
    <section aria-labelledby="result-evidence" className="space-y-4">
      <h2 id="result-evidence">What your readings proved</h2>
      <p className="max-w-prose">
        {evidence.proven
          ? "Your readings leave only the cause you named."
          : evidence.named === null
            ? "Your report does not name one of the causes that were weighed."
            : `Your readings leave ${last.length} ${last.length === 1 ? "cause" : "causes"} standing: what you named is not proven by them.`}{" "}
        The copper line is the true cause.
      </p>
      <EvidencePicture evidence={evidence} />
      <details className="print:hidden" open={evidence.steps.length <= 6}>
        <summary className="min-h-11 cursor-pointer py-2 font-semibold">The same as a table</summary>
        <Table caption="Causes ruled out by each observation" captionHidden>
          <TableHead>
            <tr>
              <HeaderCell>Line</HeaderCell>
              <HeaderCell>What was done</HeaderCell>
              <HeaderCell>Ruled out</HeaderCell>
              <HeaderCell numeric>Left</HeaderCell>
            </tr>
          </TableHead>
          <TableBody>
            {evidence.steps.map((step) => {
              const command = commands.get(step.line);
              return (
                <TableRow key={step.line}>
                  <Cell>
                    <LineLinks lines={[step.line]} />
                  </Cell>
                  <Cell>{command === undefined ? "" : describeCommand(command, names)}</Cell>
                  <Cell>
                    {step.ruledOut.length === 0 ? (
                      <span className="text-ink-soft">nothing: every cause left predicts this</span>
                    ) : (
                      step.ruledOut.map(title).join("; ")
                    )}
                  </Cell>
                  <Cell numeric>{step.standing.length}</Cell>
                </TableRow>
              );
            })}
          </TableBody>
        </Table>
        {last.length > 0 && last.length <= 12 && (
          <p className="mt-3">Left at the end: {last.map(title).join("; ")}.</p>
        )}
      </details>
    </section>
  );
}
