import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import type { ChartRows } from "@/features/papers/papers-view";

/** Values a car in order gives, computed from the model in each condition. */
export function TerminalChartTable({ rows }: { readonly rows: ChartRows }) {
  return (
    <Table caption="Values of a car in order; measured against battery negative unless said otherwise">
      <TableHead>
        <tr>
          <HeaderCell>Point</HeaderCell>
          <HeaderCell>What it is</HeaderCell>
          <HeaderCell>Condition</HeaderCell>
          <HeaderCell numeric>Value</HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {rows.map((row) => (
          <TableRow key={row.key}>
            <Cell>
              <code className="whitespace-nowrap">{row.point}</code>
              {row.againstTitle !== "" && (
                <span className="block text-sm text-ink-soft">against {row.againstTitle}</span>
              )}
            </Cell>
            <Cell>
              {row.function}
              <span className="block text-sm text-ink-soft">{row.pointTitle}</span>
            </Cell>
            <Cell>
              {row.conditionTitle}
              {row.unplugged.length > 0 && (
                <span className="block text-sm text-ink-soft">{row.unplugged.join(", ")} unplugged</span>
              )}
            </Cell>
            <Cell numeric className="whitespace-nowrap">
              {row.value}
            </Cell>
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}
