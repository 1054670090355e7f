"use client";

import { useId, useState } from "react";
import { useFormContext, useWatch } from "react-hook-form";
import { Button } from "@/components/button";
import { Dialog } from "@/components/dialog";
import { Field } from "@/components/field";
import { Icon } from "@/components/icon";
import { TextInput } from "@/components/inputs";
import type { PlaceOption } from "./builder-view";
import type { OtherFieldName, PartFieldName, PlaceFieldName } from "./fault-forms";
import { useFieldMessage } from "./messages";
import type { ScenarioForm } from "./scenario-form";

export interface PlaceFieldProps {
  readonly path: `pool.${number}.faults.${number}`;
  readonly field: PlaceFieldName;
  readonly part: PartFieldName | undefined;
  readonly other: OtherFieldName | undefined;
  readonly label: string;
  readonly options: readonly PlaceOption[];
}

/** The chosen place, and a searchable list of every place the vehicle has for this kind of fault. */
export function PlaceField({ path, field, part, other, label, options }: PlaceFieldProps) {
  const { control, setValue } = useFormContext<ScenarioForm>();
  const [open, setOpen] = useState(false);
  const labelId = useId();
  const fault = useWatch({ control, name: path });
  const place = fault[field];
  const partName = part === undefined ? "" : fault[part];
  const own = useFieldMessage(`${path}.${field}`);
  const ofPart = useFieldMessage(`${path}.${part ?? field}`);
  const message = own ?? ofPart;
  const otherName = other === undefined ? "" : fault[other];
  const chosen = options.find(
    (option) =>
      option.place === place &&
      (option.part ?? "") === partName &&
      (other === undefined || (option.other ?? "") === otherName),
  );
  const choose = (option: PlaceOption) => {
    if (part !== undefined) setValue(`${path}.${part}`, option.part ?? "");
    if (other !== undefined) setValue(`${path}.${other}`, option.other ?? "");
    setValue(`${path}.${field}`, option.place, { shouldDirty: true, shouldTouch: true });
    setOpen(false);
  };
  return (
    <div data-path={`${path}.${field}`}>
      <p id={labelId} className="font-semibold">
        {label}
      </p>
      <div className="mt-1 flex flex-wrap items-center gap-3">
        <Dialog
          title={label}
          description="Type a few letters: a designator, a cavity, a colour, a name."
          open={open}
          onOpenChange={setOpen}
          trigger={
            <Button aria-describedby={labelId}>{place === "" ? "Choose a place" : "Choose another"}</Button>
          }
        >
          <PlaceList options={options} onChoose={choose} />
        </Dialog>
        <p className="min-w-0">
          {place === "" ? (
            <span className="text-ink-soft">nothing chosen yet</span>
          ) : (
            (chosen?.title ?? `${[place, partName].filter(Boolean).join(" ")} (not in this vehicle)`)
          )}
        </p>
      </div>
      {message !== undefined && (
        <p className="mt-1 flex items-start gap-1.5 text-sm font-semibold">
          <Icon name="warning" className="mt-0.5 size-4" />
          {place === "" ? "Choose a place." : message}
        </p>
      )}
    </div>
  );
}

/** So many are drawn at once; the rest is a few letters away. */
const shownAtOnce = 60;

interface PlaceListProps {
  readonly options: readonly PlaceOption[];
  readonly onChoose: (option: PlaceOption) => void;
}

function PlaceList({ options, onChoose }: PlaceListProps) {
  const [query, setQuery] = useState("");
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  const found = options.filter((option) => {
    const text = `${option.place} ${option.title} ${option.group}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
  const shown = found.slice(0, shownAtOnce);
  const groups = new Map<string, PlaceOption[]>();
  for (const option of shown) groups.set(option.group, [...(groups.get(option.group) ?? []), option]);
  return (
    <div className="space-y-3">
      <Field label="Search">
        <TextInput
          type="search"
          autoFocus
          autoComplete="off"
          value={query}
          onChange={(event) => setQuery(event.target.value)}
          onKeyDown={(event) => {
            const [only] = found;
            if (event.key !== "Enter") return;
            event.preventDefault();
            if (found.length === 1 && only !== undefined) onChoose(only);
          }}
        />
      </Field>
      <p role="status" className="text-sm text-ink-soft">
        {found.length === 0
          ? "No such place."
          : found.length > shownAtOnce
            ? `${found.length} places; the first ${shownAtOnce} are listed.`
            : `${found.length} ${found.length === 1 ? "place" : "places"}.`}
      </p>
      {[...groups].map(([group, members]) => (
        <section key={group} aria-label={group}>
          <h3 className="label-small">{group}</h3>
          <ul>
            {members.map((option) => (
              <li key={`${option.place} ${option.part ?? ""} ${option.other ?? ""}`}>
                <button
                  type="button"
                  onClick={() => onChoose(option)}
                  className="flex min-h-11 w-full cursor-pointer items-center border-b border-hairline px-2 py-1 text-left hover:bg-panel"
                >
                  {option.title}
                </button>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
