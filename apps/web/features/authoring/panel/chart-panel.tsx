"use client";

import { useState } from "react";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { TextArea, TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { Tag } from "@/components/tag";
import type { DraftChart } from "../authoring-view";
import { useDraft } from "../draft/draft-context";
import { useDraftChart } from "./use-draft-chart";

interface ChartPanelProps {
  readonly vehicleId: string;
  readonly systemId: string | undefined;
}

/** What a meter reads on the draft: the chart rows of the chosen system, or a manual's chart beside it. */
export function ChartPanel({ vehicleId, systemId }: ChartPanelProps) {
  const draft = useDraft();
  const [pasted, setPasted] = useState("");
  const [csv, setCsv] = useState<string | null>(null);
  const { chart, isBusy } = useDraftChart(vehicleId, draft, systemId, csv);
  return (
    <div className="space-y-4">
      <p role="status" className="min-h-6 text-sm text-ink-soft">
        {systemId === undefined
          ? "Add a system first."
          : isBusy
            ? "Measuring…"
            : csv === null
              ? "The chart rows of this system, measured on the draft."
              : "Your chart, measured on the draft."}
      </p>
      {chart !== undefined && <Rows chart={chart} isPasted={csv !== null} />}
      <details className="border-t border-hairline pt-2">
        <summary className="min-h-9 cursor-pointer py-1 font-semibold">Compare with a manual's chart</summary>
        <div className="space-y-3">
          <Field label="CSV file" required={false}>
            <TextInput
              type="file"
              accept=".csv,text/csv,text/plain"
              onChange={async (event) => {
                const file = event.target.files?.[0];
                if (file !== undefined) setPasted(await file.text());
              }}
            />
          </Field>
          <Field
            label="Chart as text"
            hint="Columns terminal, function, condition, expected low, expected high, unit."
          >
            <TextArea
              rows={5}
              wrap="off"
              spellCheck={false}
              className="font-mono text-sm"
              value={pasted}
              onChange={(event) => setPasted(event.target.value)}
            />
          </Field>
          <div className="flex flex-wrap gap-3">
            <Button onClick={() => setCsv(pasted)} disabled={pasted.trim() === "" || systemId === undefined}>
              Compare
            </Button>
            {csv !== null && <Button onClick={() => setCsv(null)}>Back to its own rows</Button>}
          </div>
        </div>
      </details>
    </div>
  );
}

function Rows({ chart, isPasted }: { readonly chart: DraftChart; readonly isPasted: boolean }) {
  if (!chart.computed) return <ProblemNotice problem={{ title: chart.reason, errors: chart.errors }} />;
  if (chart.rows.length === 0)
    return <p>This system has no chart rows yet. Add them in its form, under Systems.</p>;
  return (
    <Table caption="Measured values" captionHidden>
      <TableHead>
        <tr>
          <HeaderCell>Point</HeaderCell>
          <HeaderCell>Function, condition</HeaderCell>
          <HeaderCell numeric>Reads</HeaderCell>
          {isPasted && <HeaderCell>Manual</HeaderCell>}
        </tr>
      </TableHead>
      <TableBody>
        {chart.rows.map((row, index) => (
          <TableRow key={`${index} ${row.point} ${row.condition}`}>
            <Cell>
              <code className="whitespace-nowrap">{row.point}</code>
              {row.against !== null && <span className="block text-sm text-ink-soft">to {row.against}</span>}
            </Cell>
            <Cell>
              {row.function}
              <span className="block text-sm text-ink-soft">{row.condition || "as it stands"}</span>
            </Cell>
            <Cell numeric className="whitespace-nowrap">
              {row.value === null ? "OL" : `${figure(row.value)} ${row.unit}`}
            </Cell>
            {isPasted && (
              <Cell>
                <span className="block font-mono whitespace-nowrap">{row.expected}</span>
                <Tag state={row.agrees === true ? "done" : "attention"}>
                  {row.agrees === true ? "agrees" : "differs"}
                </Tag>
                {row.agrees === false && <span className="block text-sm">{row.message}</span>}
              </Cell>
            )}
          </TableRow>
        ))}
      </TableBody>
    </Table>
  );
}

/** Four digits as a good meter shows; what is next to nothing is 0. */
function figure(value: number): string {
  if (Math.abs(value) < 5e-4) return "0.000";
  return String(Number(value.toPrecision(4))).replace("-", "\u2212");
}
