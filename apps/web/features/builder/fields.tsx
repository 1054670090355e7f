"use client";

import type { ReactNode } from "react";
import { Controller, type FieldPath, useFormContext } from "react-hook-form";
import { Field } from "@/components/field";
import { TextArea, TextInput } from "@/components/inputs";
import { NumberInput } from "@/features/forms/number-input";
import { useFieldMessage } from "./messages";
import type { ScenarioForm } from "./scenario-form";

interface LabelledProps {
  readonly name: FieldPath<ScenarioForm>;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  readonly className?: string;
}

export function TextField({
  name,
  label,
  hint,
  className,
  rows,
}: LabelledProps & { readonly rows?: number }) {
  const { register } = useFormContext<ScenarioForm>();
  return (
    <div data-path={name} className={className}>
      <Field label={label} hint={hint} error={useFieldMessage(name)}>
        {rows === undefined ? (
          <TextInput {...register(name)} />
        ) : (
          <TextArea rows={rows} {...register(name)} />
        )}
      </Field>
    </div>
  );
}

export function NumberField({ name, label, hint, className }: LabelledProps) {
  const { control } = useFormContext<ScenarioForm>();
  const error = useFieldMessage(name);
  return (
    <div data-path={name} className={className}>
      <Controller
        control={control}
        name={name}
        render={({ field }) => (
          <Field label={label} hint={hint} error={error}>
            <NumberInput field={field} />
          </Field>
        )}
      />
    </div>
  );
}
