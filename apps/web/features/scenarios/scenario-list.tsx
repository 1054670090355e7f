import Link from "next/link";
import { EmptyState } from "@/components/empty-state";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { Tag } from "@/components/tag";
import { levelWords } from "@/features/wording/terms";
import type { ScenarioLine } from "./scenarios-view";

/** What was built here first, then what came with the program. */
export function ScenarioList({ scenarios }: { readonly scenarios: readonly ScenarioLine[] }) {
  const own = scenarios.filter(({ starter }) => !starter);
  const starters = scenarios.filter(({ starter }) => starter);
  return (
    <div className="space-y-10">
      <section aria-labelledby="scenarios-own">
        <h2 id="scenarios-own" className="mb-2">
          Built here
        </h2>
        {own.length === 0 ? (
          <EmptyState title="Nothing built here yet">
            “New scenario” starts from nothing or from a copy of one below.
          </EmptyState>
        ) : (
          <ScenarioTable caption="Scenarios built here" scenarios={own} />
        )}
      </section>
      {starters.length > 0 && (
        <section aria-labelledby="scenarios-starter">
          <h2 id="scenarios-starter" className="mb-2">
            Supplied
          </h2>
          <ScenarioTable caption="Supplied scenarios" scenarios={starters} />
        </section>
      )}
    </div>
  );
}

interface ScenarioTableProps {
  readonly caption: string;
  readonly scenarios: readonly ScenarioLine[];
}

function ScenarioTable({ caption, scenarios }: ScenarioTableProps) {
  return (
    <Table caption={caption} captionHidden>
      <TableHead>
        <tr>
          <HeaderCell>Scenario</HeaderCell>
          <HeaderCell>Level</HeaderCell>
          <HeaderCell>System</HeaderCell>
          <HeaderCell numeric>Candidates</HeaderCell>
          <HeaderCell>State</HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {scenarios.map((scenario) => (
          <TableRow key={scenario.id}>
            <HeaderCell scope="row" className="max-w-md break-words">
              <Link href={`/scenarios/${scenario.id}`} className="link inline-block min-h-6">
                {scenario.title}
              </Link>
            </HeaderCell>
            <Cell>{scenario.level === null ? "" : levelWords[scenario.level]}</Cell>
            <Cell>
              {scenario.systemTitle ?? ""}
              <span className="block text-sm text-ink-soft">{scenario.vehicleName}</span>
            </Cell>
            <Cell numeric>{scenario.candidates ?? ""}</Cell>
            <Cell>
              <span className="flex flex-wrap gap-2">
                {scenario.published !== null && <Tag state="done">Version {scenario.published}</Tag>}
                {scenario.hasDraft && <Tag state="open">Draft</Tag>}
              </span>
            </Cell>
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}
