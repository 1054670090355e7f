import { Caution } from "@/components/caution";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import type { ServiceView } from "./service-view";
import { TerminalChartTable } from "./terminal-chart-table";

const parts = [
  ["service-how", "How it works"],
  ["service-chart", "Terminal chart"],
  ["service-codes", "Fault codes"],
  ["service-normal", "Surprising but normal"],
] as const;

/** The manual of the system: cautions first, then how it works, the chart, the codes, what surprises though it is normal. */
export function ServiceInformation({ service }: { readonly service: ServiceView }) {
  return (
    <div className="space-y-8">
      <nav aria-label="Parts of the manual" className="flex flex-wrap gap-x-6">
        {parts.map(([id, title]) => (
          <a key={id} href={`#${id}`} className="link inline-flex min-h-6 items-center">
            {title}
          </a>
        ))}
      </nav>
      {service.cautions.length > 0 && (
        <Caution title="Before you touch the car">
          <ul className="list-disc space-y-1 pl-5">
            {service.cautions.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Caution>
      )}
      <section aria-labelledby="service-how" className="max-w-prose space-y-4">
        <h2 id="service-how" className="scroll-mt-28">
          How it works
        </h2>
        {service.howItWorks.map((part) => (
          <section key={part.title}>
            <h3>{part.title}</h3>
            {part.paragraphs.map((paragraph) => (
              <p key={paragraph} className="mt-1">
                {paragraph}
              </p>
            ))}
          </section>
        ))}
      </section>
      <section aria-labelledby="service-chart">
        <h2 id="service-chart" className="mb-2 scroll-mt-28">
          Terminal chart
        </h2>
        <TerminalChartTable rows={service.chart} />
      </section>
      <section aria-labelledby="service-codes">
        <h2 id="service-codes" className="mb-2 scroll-mt-28">
          Fault codes
        </h2>
        <CodeTable codes={service.codes} />
      </section>
      {service.normalSurprises.length > 0 && (
        <section aria-labelledby="service-normal" className="max-w-prose">
          <h2 id="service-normal" className="scroll-mt-28">
            Surprising but normal
          </h2>
          <ul className="mt-2 list-disc space-y-1 pl-5">
            {service.normalSurprises.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

function CodeTable({ codes }: { readonly codes: ServiceView["codes"] }) {
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
