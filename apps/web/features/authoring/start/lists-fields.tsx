"use client";

import { useState } from "react";
import { Button } from "@/components/button";
import { buttonClass } from "@/components/button-class";
import { Field } from "@/components/field";
import { TextArea, TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { Cell, HeaderCell, Table, TableBody, TableHead, TableRow } from "@/components/table";
import { Tag } from "@/components/tag";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { count } from "@/features/wording/terms";
import { type ListsPreview, listsPreviewSchema } from "../authoring-view";
import { conductorExample, connectorExample } from "./example-lists";

interface Lists {
  readonly connectors: string;
  readonly conductors: string;
}

interface ListsFieldsProps {
  readonly lists: Lists;
  readonly onChange: (lists: Lists) => void;
}

const fields = [
  {
    key: "connectors",
    label: "Connectors",
    hint: "One line a cavity: connector, cavity, component, terminal.",
    example: connectorExample,
  },
  {
    key: "conductors",
    label: "Conductors",
    hint: "One line a conductor: number, from, to, colour, mm², length in m.",
    example: conductorExample,
  },
] as const;

/** Two lists as people keep them, and what would become of them. */
export function ListsFields({ lists, onChange }: ListsFieldsProps) {
  const { busy, problem, run } = useCall();
  const [preview, setPreview] = useState<ListsPreview>();
  const change = (next: Lists) => {
    setPreview(undefined);
    onChange(next);
  };
  return (
    <div className="space-y-4">
      {fields.map(({ key, label, hint, example }) => (
        <fieldset key={key} className="space-y-2 border-l-2 border-hairline pl-4">
          <legend className="font-semibold">{label}</legend>
          <div className="flex flex-wrap items-end gap-3">
            <Field label={`${label}, CSV file`} className="min-w-64 flex-1">
              <TextInput
                type="file"
                accept=".csv,.tsv,text/csv,text/plain"
                onChange={async (event) => {
                  const file = event.target.files?.[0];
                  if (file !== undefined) change({ ...lists, [key]: await file.text() });
                }}
              />
            </Field>
            <a
              href={`data:text/csv;charset=utf-8,${encodeURIComponent(example)}`}
              download={`${key}.csv`}
              className={buttonClass("quiet")}
            >
              Example file
            </a>
            <Button onClick={() => change({ ...lists, [key]: example })}>Fill in the example</Button>
          </div>
          <Field label={`${label} as text`} hint={hint}>
            <TextArea
              rows={6}
              wrap="off"
              spellCheck={false}
              className="font-mono text-sm"
              value={lists[key]}
              onChange={(event) => change({ ...lists, [key]: event.target.value })}
            />
          </Field>
        </fieldset>
      ))}
      <Button
        busy={busy}
        onClick={() =>
          void run(async () => setPreview(await postJson("/api/vehicles/lists", lists, listsPreviewSchema)))
        }
      >
        Preview
      </Button>
      {problem !== undefined && <ProblemNotice problem={problem} />}
      {preview !== undefined && <Preview preview={preview} />}
    </div>
  );
}

function Preview({ preview }: { readonly preview: ListsPreview }) {
  const { components, connectors, conductors, messages } = preview;
  return (
    <section aria-label="Preview" className="space-y-2" aria-live="polite">
      <p>
        {count(components, "component")}, {count(connectors, "connector")}, {count(conductors, "conductor")}.
        {messages.length === 0 ? " Every line was read." : ` ${count(messages.length, "line")} to look at:`}
      </p>
      {messages.length > 0 && (
        <Table caption="Lines to look at" captionHidden>
          <TableHead>
            <tr>
              <HeaderCell>List</HeaderCell>
              <HeaderCell numeric>Line</HeaderCell>
              <HeaderCell>Message</HeaderCell>
            </tr>
          </TableHead>
          <TableBody>
            {messages.map(({ file, line, severity, message }) => (
              <TableRow key={`${file} ${line} ${message}`}>
                <Cell>{file}</Cell>
                <Cell numeric>{line}</Cell>
                <Cell>
                  <Tag state={severity === "error" ? "attention" : "open"}>
                    {severity === "error" ? "left out" : "worth a look"}
                  </Tag>{" "}
                  {message}
                </Cell>
              </TableRow>
            ))}
          </TableBody>
        </Table>
      )}
    </section>
  );
}
