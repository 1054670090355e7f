"use client";

import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { z } from "zod";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { Checkbox, Radio, Select, TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { type NewVehicle, newVehicleSchema } from "../authoring-input";
import type { NewVehicleView } from "../authoring-view";
import { JsonFields, type JsonFile } from "./json-fields";
import { ListsFields } from "./lists-fields";

type Start = NewVehicle["start"];

const starts: readonly { readonly value: Start; readonly label: string; readonly hint: string }[] = [
  {
    value: "blank",
    label: "A blank sheet",
    hint: "A battery, its ground and a key switch's condition are there; the rest is yours.",
  },
  {
    value: "training",
    label: "Systems of the training vehicle",
    hint: "Choose what comes close and change it.",
  },
  {
    value: "lists",
    label: "Spreadsheets",
    hint: "A list of connectors and a list of conductors, as CSV files or pasted.",
  },
  {
    value: "json",
    label: "A vehicle file",
    hint: "A JSON file exported here, or written after the JSON Schema.",
  },
];

/** What a vehicle of one's own begins with. */
export function NewVehicleForm({ view }: { readonly view: NewVehicleView }) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const [start, setStart] = useState<Start>("blank");
  const [title, setTitle] = useState("");
  const [systems, setSystems] = useState<readonly string[]>([]);
  const [placement, setPlacement] = useState(view.placements[0]?.id ?? "");
  const [lists, setLists] = useState({ connectors: "", conductors: "" });
  const [file, setFile] = useState<JsonFile>({ text: "" });
  const [errors, setErrors] = useState<Readonly<Record<string, string>>>({});

  const inputOf = (): unknown => {
    switch (start) {
      case "blank":
        return { start, title };
      case "training":
        return { start, title, systems, placement: placement === "" ? null : placement };
      case "lists":
        return { start, title, ...lists };
      case "json":
        return { start, title: title.trim() === "" ? null : title, document: file.document };
    }
  };
  const create = (event: FormEvent) => {
    event.preventDefault();
    const parsed = newVehicleSchema.safeParse(inputOf());
    const own = Object.fromEntries(
      (parsed.success ? [] : parsed.error.issues).map(({ path, message }) => [
        String(path[0] ?? ""),
        message,
      ]),
    );
    const unread =
      start === "json" && file.document === undefined ? { document: file.error ?? "Choose a file." } : {};
    setErrors({ ...own, ...unread });
    if (!parsed.success || Object.keys(unread).length > 0) return;
    void run(async () => {
      const { id } = await postJson("/api/vehicles", parsed.data, z.object({ id: z.string() }));
      router.push(`/vehicles/${id}/edit`);
    });
  };
  return (
    <form noValidate onSubmit={create} className="max-w-3xl space-y-6">
      {problem !== undefined && <ProblemNotice problem={problem} />}
      <fieldset>
        <legend className="font-semibold">Start from</legend>
        <div className="mt-1 grid gap-x-8 sm:grid-cols-2">
          {starts.map(({ value, label, hint }) => (
            <Radio
              key={value}
              name="start"
              label={label}
              hint={hint}
              checked={start === value}
              onChange={() => setStart(value)}
            />
          ))}
        </div>
      </fieldset>
      <Field
        label="Name of the vehicle"
        required={start !== "json"}
        hint={
          start === "json" ? "Empty: as the file says." : "For example the college's own car and its year."
        }
        error={errors.title}
      >
        <TextInput value={title} maxLength={120} onChange={(event) => setTitle(event.target.value)} />
      </Field>
      {start === "training" && (
        <>
          <fieldset>
            <legend className="font-semibold">Systems</legend>
            <div className="grid gap-x-8 sm:grid-cols-2">
              {view.trainingSystems.map(({ id, title: name, components }) => (
                <Checkbox
                  key={id}
                  label={name}
                  hint={`${components} components`}
                  checked={systems.includes(id)}
                  onChange={(event) =>
                    setSystems(event.target.checked ? [...systems, id] : systems.filter((own) => own !== id))
                  }
                />
              ))}
            </div>
            {errors.systems !== undefined && <p className="text-sm font-semibold">{errors.systems}</p>}
          </fieldset>
          {view.placements.length > 0 && (
            <Field label="Power steering acts on">
              <Select value={placement} onChange={(event) => setPlacement(event.target.value)}>
                {view.placements.map(({ id, title: name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </Select>
            </Field>
          )}
        </>
      )}
      {start === "lists" && <ListsFields lists={lists} onChange={setLists} />}
      {start === "json" && <JsonFields file={file} error={errors.document} onChange={setFile} />}
      <Button type="submit" kind="primary" busy={busy}>
        {busy ? "Making it…" : "Make the vehicle"}
      </Button>
    </form>
  );
}
