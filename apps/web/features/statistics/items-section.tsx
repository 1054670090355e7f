import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { CoefficientFigure, ShareFigure } from "./figures";
import { IntervalBar } from "./interval-bar";
import type { StatisticsView } from "./statistics-view";

export function ItemsSection({ items }: { readonly items: StatisticsView["items"] }) {
  return (
    <section aria-labelledby="assignments-heading" className="space-y-3">
      <h2 id="assignments-heading" className="text-xl font-semibold">
        Assignments
      </h2>
      <p className="max-w-prose">
        How many found the cause, and whether those who find it here find it elsewhere too. In brackets the
        range that fits these attempts with 95 % confidence.
      </p>
      <Table caption="Assignments: share of right causes, and how well each separates" captionHidden>
        <TableHead>
          <tr>
            <HeaderCell>Assignment</HeaderCell>
            <HeaderCell numeric>Attempts</HeaderCell>
            <HeaderCell>Cause right</HeaderCell>
            <HeaderCell>
              <span aria-hidden="true">none to all</span>
              <span className="sr-only">Drawing of the share</span>
            </HeaderCell>
            <HeaderCell>Goes with the others</HeaderCell>
          </tr>
        </TableHead>
        <TableBody>
          {items.map(({ assignmentId, title, difficulty, attempts, discrimination }) => (
            <TableRow key={assignmentId}>
              <HeaderCell scope="row" className="max-w-72 break-words">
                {title}
              </HeaderCell>
              <Cell numeric>{attempts ?? "–"}</Cell>
              <Cell>
                <ShareFigure share={difficulty} />
              </Cell>
              <Cell>
                <IntervalBar share={difficulty} />
              </Cell>
              <Cell>
                <CoefficientFigure coefficient={discrimination} />
              </Cell>
            </TableRow>
          ))}
        </TableBody>
      </Table>
      <p className="max-w-prose text-sm text-ink-soft">
        “Goes with the others” is the correlation with the number of right causes in the other assignments,
        among the learners named under reliability. Below 0.2 an assignment tells little about who can
        diagnose; below 0 it is worth a look.
      </p>
    </section>
  );
}
