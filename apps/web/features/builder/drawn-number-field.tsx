"use client";

import { Controller, useFormContext, useWatch } from "react-hook-form";
import { Field } from "@/components/field";
import { Icon } from "@/components/icon";
import { Select } from "@/components/inputs";
import { NumberInput } from "@/features/forms/number-input";
import type { NumberFieldName } from "./fault-forms";
import { useFieldMessage } from "./messages";
import type { ScenarioForm } from "./scenario-form";

export interface DrawnNumberFieldProps {
  readonly name: `pool.${number}.faults.${number}.${NumberFieldName}`;
  readonly label: string;
  readonly unit: string;
  readonly hint: string;
}

/** A severity: one number for everybody, or a range from which each learner's car draws. */
export function DrawnNumberField({ name, label, unit, hint }: DrawnNumberFieldProps) {
  const { control, register } = useFormContext<ScenarioForm>();
  const mode = useWatch({ control, name: `${name}.mode` });
  const message = useFieldMessage(name);
  const number = (part: "value" | "from" | "to", words: string) => (
    <Controller
      control={control}
      name={`${name}.${part}`}
      render={({ field }) => (
        <Field label={`${words}, ${unit}`} className="max-w-44">
          <NumberInput field={field} />
        </Field>
      )}
    />
  );
  return (
    <fieldset data-path={name}>
      <legend className="font-semibold">{label}</legend>
      <p className="text-sm text-ink-soft">{hint}</p>
      <div className="mt-1 flex flex-wrap items-end gap-4">
        <Field label="Drawn">
          <Select {...register(`${name}.mode`)}>
            <option value="fixed">fixed</option>
            <option value="range">from a range</option>
          </Select>
        </Field>
        {mode === "range" ? (
          <>
            {number("from", "From")}
            {number("to", "To")}
            <Field label="Spread">
              <Select {...register(`${name}.spread`)}>
                <option value="linear">even</option>
                <option value="log">even over decades</option>
              </Select>
            </Field>
          </>
        ) : (
          number("value", "Value")
        )}
      </div>
      {message !== undefined && (
        <p className="mt-1 flex items-start gap-1.5 text-sm font-semibold">
          <Icon name="warning" className="mt-0.5 size-4" />
          {message}
        </p>
      )}
    </fieldset>
  );
}
