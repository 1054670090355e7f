"use client";

import { Controller, useFormContext, useWatch } from "react-hook-form";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { Select } from "@/components/inputs";
import type { BuilderView } from "./builder-view";
import { DrawnNumberField } from "./drawn-number-field";
import { faultForms, faultKindNames, isFaultKind } from "./fault-forms";
import { useFieldMessage } from "./messages";
import { PlaceField } from "./place-field";
import { emptyFault, type ScenarioForm } from "./scenario-form";
import { WhenFields } from "./when-fields";

export interface FaultEditorProps {
  readonly path: `pool.${number}.faults.${number}`;
  readonly number: number;
  readonly places: BuilderView["vehicle"]["places"];
  readonly conditions: BuilderView["vehicle"]["conditions"];
  readonly onRemove: () => void;
}

/** Kind, then the place where a fault of that kind can be, then how bad it is. */
export function FaultEditor({ path, number, places, conditions, onRemove }: FaultEditorProps) {
  const { control, setValue } = useFormContext<ScenarioForm>();
  const kind = useWatch({ control, name: `${path}.kind` });
  const definition = isFaultKind(kind) ? faultForms[kind] : undefined;
  const kindMessage = useFieldMessage(`${path}.kind`);
  return (
    <div data-path={path} className="space-y-4 border-l-4 border-hairline pl-4">
      <div className="grid items-start gap-4 lg:grid-cols-[18rem_1fr_auto]">
        <div data-path={`${path}.kind`}>
          <Controller
            control={control}
            name={`${path}.kind`}
            render={({ field }) => (
              <Field label={`Fault ${number}: kind`} error={kindMessage}>
                <Select
                  name={field.name}
                  ref={field.ref}
                  value={field.value}
                  onBlur={field.onBlur}
                  // A place of one kind is no place of another, so a new kind starts afresh with its usual numbers.
                  onChange={(event) => setValue(path, emptyFault(event.target.value), { shouldDirty: true })}
                >
                  <option value="">Choose a kind</option>
                  {faultKindNames.map((name) => (
                    <option key={name} value={name}>
                      {faultForms[name].title}
                    </option>
                  ))}
                </Select>
              </Field>
            )}
          />
        </div>
        <div className="space-y-4">
          {definition?.places.map(({ field, label, part, other }) => (
            <PlaceField
              key={field}
              path={path}
              field={field}
              part={part}
              other={other}
              label={label}
              options={places[kind] ?? []}
            />
          ))}
          {definition === undefined && (
            <p className="pt-7 text-ink-soft">The kind decides where it can be.</p>
          )}
        </div>
        <Button
          className="justify-self-start lg:mt-7"
          aria-label={`Remove fault ${number}`}
          onClick={onRemove}
        >
          Remove
        </Button>
      </div>
      {definition?.condition === true && <WhenFields path={path} conditions={conditions} />}
      {definition?.numbers.map((one) => (
        <DrawnNumberField
          key={one.field}
          name={`${path}.${one.field}`}
          label={one.label}
          unit={one.unit}
          hint={one.hint}
        />
      ))}
    </div>
  );
}
