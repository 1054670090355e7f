"use client";

import { type ReactNode, useId, useState } from "react";
import { Caution } from "@/components/caution";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { PlacePlanView } from "@/features/papers/place-plan-view";
import { ConnectorFaces } from "./connector-faces";
import { PlaceTable } from "./place-table";
import type { ServiceSystem, ServiceView } from "./service-view";
import { SystemChart } from "./system-chart";

export interface ServiceInformationProps {
  readonly service: ServiceView;
  /** Address of the papers the charts and faces come from. */
  readonly papers: string;
  readonly initialSystem?: string | undefined;
  readonly onSystem?: (system: string) => void;
  /** The wiring diagram, where the manual stands by itself; in the bay it has a tab of its own. */
  readonly diagram?: (system: string) => ReactNode;
}

/** The manual: a system is chosen, then its parts are read one below the other. */
export function ServiceInformation(props: ServiceInformationProps) {
  const { service, papers, initialSystem, onSystem, diagram } = props;
  const [chosen, setChosen] = useState(initialSystem ?? service.systems[0]?.id);
  const system = service.systems.find(({ id }) => id === chosen) ?? service.systems[0];
  if (system === undefined) return <p>This vehicle has no system yet.</p>;
  const own = new Set(system.connectors);
  return (
    <div className="grid items-start gap-6 lg:grid-cols-[13rem_minmax(0,1fr)]">
      <nav aria-label="Systems" className="no-print lg:sticky lg:top-4">
        <ul className="flex flex-wrap lg:block lg:border-l lg:border-hairline">
          {service.systems.map(({ id, title }) => (
            <li key={id}>
              <button
                type="button"
                aria-current={id === system.id || undefined}
                onClick={() => {
                  setChosen(id);
                  onSystem?.(id);
                }}
                className="min-h-11 w-full cursor-pointer border-l-4 border-transparent px-3 text-left leading-tight hover:bg-panel aria-[current=true]:border-copper-fill aria-[current=true]:bg-panel aria-[current=true]:font-semibold"
              >
                {title}
              </button>
            </li>
          ))}
        </ul>
      </nav>
      <SystemPages
        key={system.id}
        system={system}
        papers={papers}
        connectors={service.connectors.filter(({ id }) => own.has(id))}
        diagram={diagram?.(system.id)}
      />
    </div>
  );
}

interface SystemPagesProps {
  readonly system: ServiceSystem;
  readonly papers: string;
  readonly connectors: ServiceView["connectors"];
  readonly diagram: ReactNode;
}

/** Cautions first, then how it works, the drawings, the chart, the codes, what surprises though it is normal. */
function SystemPages({ system, papers, connectors, diagram }: SystemPagesProps) {
  const id = useId();
  const parts: readonly { readonly key: string; readonly title: string; readonly content: ReactNode }[] = [
    { key: "how", title: "How it works", content: <HowItWorks system={system} /> },
    ...(diagram === undefined ? [] : [{ key: "diagram", title: "Wiring diagram", content: diagram }]),
    { key: "chart", title: "Terminal chart", content: <SystemChart papers={papers} system={system.id} /> },
    { key: "codes", title: "Fault codes", content: <CodeTable codes={system.codes} /> },
    {
      key: "faces",
      title: "Connector faces",
      content: <ConnectorFaces papers={papers} connectors={connectors} />,
    },
    { key: "places", title: "Component places", content: <Places system={system} papers={papers} /> },
    ...(system.normalSurprises.length === 0
      ? []
      : [
          {
            key: "normal",
            title: "Surprising but normal",
            content: (
              <ul className="max-w-prose list-disc space-y-1 pl-5">
                {system.normalSurprises.map((text) => (
                  <li key={text}>{text}</li>
                ))}
              </ul>
            ),
          },
        ]),
  ];
  return (
    <div className="min-w-0 space-y-8">
      <nav aria-label="Parts of the manual" className="no-print flex flex-wrap gap-x-6">
        {parts.map(({ key, title }) => (
          <a key={key} href={`#${id}-${key}`} className="link inline-flex min-h-6 items-center">
            {title}
          </a>
        ))}
      </nav>
      {system.cautions.length > 0 && (
        <Caution title="Before you touch the car">
          <ul className="list-disc space-y-1 pl-5">
            {system.cautions.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Caution>
      )}
      {parts.map(({ key, title, content }) => (
        <section key={key} aria-labelledby={`${id}-${key}`}>
          <h2 id={`${id}-${key}`} className="mb-2 scroll-mt-28">
            {title}
          </h2>
          {content}
        </section>
      ))}
    </div>
  );
}

function Places({ system, papers }: { readonly system: ServiceSystem; readonly papers: string }) {
  return (
    <div className="space-y-4">
      <PlacePlanView
        papers={papers}
        marked={new Set([...system.places.map(({ id }) => id), ...system.connectors])}
      />
      <PlaceTable places={system.places} />
    </div>
  );
}

function HowItWorks({ system }: { readonly system: ServiceSystem }) {
  return (
    <div className="max-w-prose space-y-4">
      {system.howItWorks.map((part) => (
        <section key={part.title}>
          <h3>{part.title}</h3>
          {part.paragraphs.map((paragraph) => (
            <p key={paragraph} className="mt-1">
              {paragraph}
            </p>
          ))}
        </section>
      ))}
    </div>
  );
}

function CodeTable({ codes }: { readonly codes: ServiceSystem["codes"] }) {
  if (codes.length === 0) return <p>No control module of this system stores codes of its own.</p>;
  return (
    <Table caption="Fault codes of the system" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell>Module</HeaderCell>
          <HeaderCell>Code</HeaderCell>
          <HeaderCell>Meaning</HeaderCell>
          <HeaderCell>Usual causes</HeaderCell>
          <HeaderCell>Lamp</HeaderCell>
        </tr>
      </TableHead>
      <TableBody>
        {codes.map((code) => (
          <TableRow key={code.key}>
            <Cell>{code.module}</Cell>
            <Cell>
              <code className="font-semibold whitespace-nowrap">{code.code}</code>
            </Cell>
            <Cell>{code.text}</Cell>
            <Cell>{code.causes.join("; ")}</Cell>
            <Cell>{code.warningLamp ? "on" : "no"}</Cell>
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}
