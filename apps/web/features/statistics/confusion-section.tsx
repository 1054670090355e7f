import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { ShareFigure } from "./figures";
import type { StatisticsView } from "./statistics-view";

export function ConfusionSection({ confusion }: { readonly confusion: StatisticsView["confusion"] }) {
  const { kinds, rows, severalFaults, severalNamed } = confusion;
  return (
    <section aria-labelledby="kinds-heading" className="space-y-3">
      <h2 id="kinds-heading" className="text-xl font-semibold">
        What is taken for what
      </h2>
      <p className="max-w-prose">
        What was wrong with the car down the side, what the report called it across. Only the kind is
        compared, the place may still be another. A name that is as good as the usual one stands under the
        usual one.
      </p>
      {rows.length === 0 ? (
        <p className="text-ink-soft">No report with one fault and one named cause yet.</p>
      ) : (
        <Table caption="True kinds of fault against named kinds, in attempts" captionHidden>
          <TableHead>
            <tr>
              <HeaderCell>True kind</HeaderCell>
              {kinds.map((kind) => (
                <HeaderCell key={kind} numeric className="max-w-32 min-w-20 text-sm">
                  {kind}
                </HeaderCell>
              ))}
              <HeaderCell>Named rightly</HeaderCell>
              <HeaderCell>Most taken for</HeaderCell>
            </tr>
          </TableHead>
          <TableBody>
            {rows
              .map((row, own) => ({ ...row, own }))
              .filter(({ attempts }) => attempts > 0)
              .map(({ kind, counts, right, takenFor, own }) => (
                <TableRow key={kind}>
                  <HeaderCell scope="row" className="max-w-60">
                    {kind}
                  </HeaderCell>
                  {counts.map((count, column) => (
                    <Cell
                      key={kinds[column]}
                      numeric
                      className={column === own ? "border-2 border-ink font-semibold" : undefined}
                    >
                      {count}
                    </Cell>
                  ))}
                  <Cell>
                    <ShareFigure share={right} />
                  </Cell>
                  <Cell>{takenFor ?? "–"}</Cell>
                </TableRow>
              ))}
          </TableBody>
        </Table>
      )}
      <p className="max-w-prose text-sm text-ink-soft">
        Not in the table: {severalFaults} with more than one fault in the car, {severalNamed} with more than
        one kind named.
      </p>
    </section>
  );
}
