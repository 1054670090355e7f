"use client";

import { Controller, useFormContext, useWatch } from "react-hook-form";
import { Field } from "@/components/field";
import { Select } from "@/components/inputs";
import { NumberInput } from "@/features/forms/number-input";
import type { BuilderView } from "./builder-view";
import type { ScenarioForm } from "./scenario-form";

export interface WhenFieldsProps {
  readonly path: `pool.${number}.faults.${number}`;
  readonly conditions: BuilderView["vehicle"]["conditions"];
}

/** In which state of the car an intermittent fault shows: a choice, or a number above or below a limit. */
export function WhenFields({ path, conditions }: WhenFieldsProps) {
  const { control, register } = useFormContext<ScenarioForm>();
  const name = useWatch({ control, name: `${path}.condition` });
  const condition = conditions.find((one) => one.name === name);
  return (
    <div className="grid items-start gap-4 sm:grid-cols-3">
      <Field label="Shows with">
        <Select {...register(`${path}.condition`)}>
          <option value="">Choose a condition</option>
          {conditions.map((one) => (
            <option key={one.name} value={one.name}>
              {one.title}
            </option>
          ))}
        </Select>
      </Field>
      {condition?.kind === "choice" && (
        <Field label="At">
          <Select {...register(`${path}.is`)}>
            <option value="">Choose a position</option>
            {condition.options.map(({ value, title }) => (
              <option key={value} value={value}>
                {title}
              </option>
            ))}
          </Select>
        </Field>
      )}
      {condition?.kind === "number" &&
        (["above", "below"] as const).map((side) => (
          <Controller
            key={side}
            control={control}
            name={`${path}.${side}.value`}
            render={({ field }) => (
              <Field label={`${side === "above" ? "Above" : "Below"}, ${condition.unit}`}>
                <NumberInput field={field} />
              </Field>
            )}
          />
        ))}
    </div>
  );
}
