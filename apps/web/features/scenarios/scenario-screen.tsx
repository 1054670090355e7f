import { rubricLines, type ScenarioDocument } from "@probeworthy/evaluation";
import Link from "next/link";
import { buttonClass } from "@/components/button-class";
import { DefinitionList } from "@/components/definition-list";
import { EmptyState } from "@/components/empty-state";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { LocalTime } from "@/features/time/local-time";
import { instrumentWords, levelWords, rubricWords } from "@/features/wording/terms";
import type { ScenarioView } from "./scenario-view";

export function ScenarioScreen({ view }: { readonly view: ScenarioView }) {
  const { document } = view;
  if (document === null) {
    return (
      <EmptyState
        title="Not published yet"
        action={
          <Link href={`/scenarios/${view.id}/edit`} className={buttonClass("primary")}>
            Go on with the draft
          </Link>
        }
      >
        Only a draft exists. Once published it can be handed out.
      </EmptyState>
    );
  }
  return (
    <div className="grid gap-x-12 gap-y-10 lg:grid-cols-[minmax(0,3fr)_minmax(0,2fr)]">
      <div className="min-w-0 space-y-10">
        <Pool pool={view.pool} />
        <section aria-labelledby="scenario-complaints">
          <h2 id="scenario-complaints" className="mb-2">
            What the customer says
          </h2>
          <ul className="space-y-2">
            {document.complaints.map((complaint) => (
              <li key={complaint} className="border-l-4 border-hairline pl-3">
                “{complaint}”
              </li>
            ))}
          </ul>
        </section>
        {document.instructorNote !== "" && (
          <section aria-labelledby="scenario-note" className="max-w-prose">
            <h2 id="scenario-note" className="mb-2">
              Note for staff
            </h2>
            <p className="whitespace-pre-line">{document.instructorNote}</p>
          </section>
        )}
      </div>
      <div className="min-w-0 space-y-10">
        <UseIt view={view} />
        <Terms view={view} document={document} />
      </div>
    </div>
  );
}

function Pool({ pool }: { readonly pool: ScenarioView["pool"] }) {
  return (
    <section aria-labelledby="scenario-pool">
      <h2 id="scenario-pool" className="mb-2">
        What can be wrong
      </h2>
      <Table caption="Candidate causes" captionHidden>
        <TableHead>
          <tr>
            <HeaderCell>Candidate</HeaderCell>
            <HeaderCell>Fault</HeaderCell>
            <HeaderCell numeric>Drawn</HeaderCell>
          </tr>
        </TableHead>
        <TableBody>
          {pool.map(({ id, title, share, normal, faults }) => (
            <TableRow key={id}>
              <HeaderCell scope="row">
                {title}
                {normal && <span className="block text-sm font-normal">surprising but normal</span>}
              </HeaderCell>
              <Cell>
                {faults.length === 0 ? (
                  <span className="text-ink-soft">none: the car is in order</span>
                ) : (
                  faults.map((fault) => <p key={fault}>{fault}</p>)
                )}
              </Cell>
              <Cell numeric>{(100 * share).toFixed(0)} %</Cell>
            </TableRow>
          ))}
        </TableBody>
      </Table>
    </section>
  );
}

function UseIt({ view }: { readonly view: ScenarioView }) {
  if (view.classes.length === 0) return null;
  return (
    <section aria-labelledby="scenario-use" className="no-print border-2 border-ink p-4">
      <h2 id="scenario-use" className="mb-2">
        Hand it out
      </h2>
      <ul className="space-y-1">
        {view.classes.map(({ id, title }) => (
          <li key={id}>
            <Link
              href={`/classes/${id}/assignments/new?scenario=${view.id}`}
              className="link inline-flex min-h-8 items-center"
            >
              to {title}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Terms({ view, document }: { readonly view: ScenarioView; readonly document: ScenarioDocument }) {
  const { weights, limits, par } = document;
  const sum = rubricLines.reduce((total, line) => total + weights[line], 0);
  return (
    <section aria-labelledby="scenario-terms">
      <h2 id="scenario-terms" className="mb-3">
        Terms
      </h2>
      <DefinitionList
        items={[
          { term: "Level", value: levelWords[document.level] },
          { term: "System", value: `${view.systemTitle ?? document.system}, ${view.vehicleName}` },
          {
            term: "Handed over with",
            value:
              view.startConditions.length === 0
                ? "the vehicle's usual condition"
                : view.startConditions.join("; "),
          },
          {
            term: "Instruments",
            value: document.instruments.map((name) => instrumentWords[name]).join(", "),
          },
          { term: "Limits", value: `${limits.shopMinutes} min of shop time, ${limits.actions} actions` },
          { term: "Par", value: `${par.shopMinutes} min, ${par.readings} readings` },
          {
            term: "Prediction",
            value: document.requirePrediction ? "asked before each reading" : "not asked",
          },
          {
            term: "Weights",
            value: rubricLines
              .map((line) => `${rubricWords[line]} ${((100 * weights[line]) / sum).toFixed(0)} %`)
              .join(", "),
          },
          { term: "Pass mark", value: `${document.passMark} of 100` },
          ...(view.version === null
            ? []
            : [
                {
                  term: "Published",
                  value: (
                    <>
                      Version {view.version.number}, <LocalTime at={view.version.publishedAt} />
                    </>
                  ),
                },
              ]),
        ]}
      />
    </section>
  );
}
