"use client";

import { rubricLines, type Weights } from "@probeworthy/evaluation";
import { type Control, Controller, type FieldValues, type Path, useWatch } from "react-hook-form";
import { Field } from "@/components/field";
import { NumberInput } from "@/features/forms/number-input";
import { rubricWords } from "@/features/wording/terms";

export interface WeightFieldsProps<Values extends FieldValues> {
  readonly control: Control<Values>;
  /** Path of the weights in the form. */
  readonly name: Path<Values>;
  readonly message?: string | undefined;
}

/** How much each line of the rubric counts; beside each the share it comes to, because only shares matter. */
export function WeightFields<Values extends FieldValues>({
  control,
  name,
  message,
}: WeightFieldsProps<Values>) {
  const weights: Partial<Record<keyof Weights, unknown>> | undefined = useWatch({ control, name });
  const numbers = rubricLines.map((line) => Number(weights?.[line] ?? 0) || 0);
  const sum = numbers.reduce((total, number) => total + number, 0);
  return (
    <fieldset data-path={name}>
      <legend className="font-semibold">Weights of the rubric</legend>
      <p className="text-sm text-ink-soft">Any scale; each line's share of the 100 points stands below it.</p>
      <div className="mt-2 grid grid-cols-2 gap-4 sm:grid-cols-5">
        {rubricLines.map((line, index) => (
          <Controller
            key={line}
            control={control}
            name={`${name}.${line}` as Path<Values>}
            render={({ field, fieldState }) => (
              <Field
                label={rubricWords[line]}
                error={fieldState.error === undefined ? undefined : "A number, 0 or more."}
              >
                <NumberInput field={field} />
                <p className="mt-1 text-right font-mono text-sm">
                  {sum === 0 ? "–" : `${((100 * (numbers[index] ?? 0)) / sum).toFixed(0)} %`}
                </p>
              </Field>
            )}
          />
        ))}
      </div>
      {message !== undefined && (
        <p role="alert" className="mt-1 text-sm font-semibold">
          {message}
        </p>
      )}
    </fieldset>
  );
}
