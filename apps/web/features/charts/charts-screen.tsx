import Link from "next/link";
import { EmptyState } from "@/components/empty-state";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { LocalTime } from "@/features/time/local-time";
import { ChartForm } from "./chart-form";
import { ChartGuide } from "./chart-guide";
import type { ChartsView } from "./charts-view";

export function ChartsScreen({ view }: { readonly view: ChartsView }) {
  return (
    <div className="space-y-10">
      <div className="grid gap-x-12 gap-y-10 lg:grid-cols-2">
        <ChartForm vehicleId={view.vehicleId} />
        <section aria-labelledby="charts-earlier">
          <h2 id="charts-earlier" className="mb-2">
            Checked before
          </h2>
          {view.charts.length === 0 ? (
            <EmptyState title="No chart yet">
              A chart that has been checked stays here with its result.
            </EmptyState>
          ) : (
            <Table caption="Charts checked before" captionHidden>
              <TableHead>
                <tr>
                  <HeaderCell>Chart</HeaderCell>
                  <HeaderCell>Checked</HeaderCell>
                </tr>
              </TableHead>
              <TableBody>
                {view.charts.map((chart) => (
                  <TableRow key={chart.id}>
                    <HeaderCell scope="row" className="break-words">
                      <Link
                        href={`/vehicles/${view.vehicleId}/charts/${chart.id}`}
                        className="link inline-block min-h-6"
                      >
                        {chart.name}
                      </Link>
                      {!chart.current && (
                        <span className="block text-sm font-normal text-ink-soft">
                          against an earlier version of the vehicle
                        </span>
                      )}
                    </HeaderCell>
                    <Cell className="whitespace-nowrap">
                      <LocalTime at={chart.createdAt} />
                    </Cell>
                  </TableRow>
                ))}
              </TableBody>
            </Table>
          )}
        </section>
      </div>
      <ChartGuide view={view} />
    </div>
  );
}
