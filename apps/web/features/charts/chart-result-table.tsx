import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { Tag } from "@/components/tag";
import type { ChartResult } from "./charts-view";

/** Row by row: what the manual expects, what the vehicle reads, and whether they agree. */
export function ChartResultTable({ rows }: { readonly rows: ChartResult["rows"] }) {
  return (
    <Table caption="Rows of the chart with the simulated value" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell numeric>Line</HeaderCell>
          <HeaderCell>Point</HeaderCell>
          <HeaderCell>Function</HeaderCell>
          <HeaderCell>Condition</HeaderCell>
          <HeaderCell numeric>Expected</HeaderCell>
          <HeaderCell numeric>Simulated</HeaderCell>
          <HeaderCell>Verdict</HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {rows.map((row) => (
          <TableRow key={row.line}>
            <Cell numeric>{row.line}</Cell>
            <Cell>
              <code className="whitespace-nowrap">{row.point}</code>
              {row.against !== null && (
                <span className="block text-sm text-ink-soft">against {row.against}</span>
              )}
            </Cell>
            <Cell>{row.function}</Cell>
            <Cell>{row.condition === "" ? "as it stands" : row.condition}</Cell>
            <Cell numeric className="whitespace-nowrap">
              {row.expected}
            </Cell>
            <Cell numeric className="whitespace-nowrap">
              {row.value === null ? "OL" : `${formatFigure(row.value)} ${row.unit}`}
            </Cell>
            <Cell>
              <Tag state={row.agrees ? "done" : "attention"}>{row.agrees ? "agrees" : "differs"}</Tag>
              {!row.agrees && <span className="block text-sm">{row.message}</span>}
            </Cell>
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}

/** Four digits as a good meter shows; what is next to nothing is 0. */
function formatFigure(value: number): string {
  if (Math.abs(value) < 5e-4) return "0.000";
  return String(Number(value.toPrecision(4))).replace("-", "\u2212");
}
