"use client";

import { instrumentNames } from "@probeworthy/evaluation";
import { Controller, useFormContext } from "react-hook-form";
import { Field } from "@/components/field";
import { Checkbox, Select } from "@/components/inputs";
import { NumberInput } from "@/features/forms/number-input";
import { instrumentWords } from "@/features/wording/terms";
import type { BuilderView } from "./builder-view";
import { NumberField } from "./fields";
import { useFieldMessage } from "./messages";
import type { ScenarioForm } from "./scenario-form";
import { Section } from "./section";

type Condition = BuilderView["vehicle"]["conditions"][number];

/** How the car is handed over, with what, and for how long. */
export function StartSection({ conditions }: { readonly conditions: readonly Condition[] }) {
  const { register } = useFormContext<ScenarioForm>();
  const instrumentsMessage = useFieldMessage("instruments");
  return (
    <Section id="builder-start" title="Start, instruments and limits">
      <fieldset data-path="startConditions">
        <legend className="font-semibold">The car as it is handed over</legend>
        <div className="mt-2 grid gap-4 sm:grid-cols-2 lg:grid-cols-3">
          {conditions.map((condition) => (
            <StartCondition key={condition.name} condition={condition} />
          ))}
        </div>
      </fieldset>
      <fieldset data-path="instruments">
        <legend className="font-semibold">Instruments allowed</legend>
        <div className="grid sm:grid-cols-2 lg:grid-cols-3">
          {instrumentNames.map((name) => (
            <Checkbox key={name} value={name} label={instrumentWords[name]} {...register("instruments")} />
          ))}
        </div>
        {instrumentsMessage !== undefined && <p className="text-sm font-semibold">{instrumentsMessage}</p>}
      </fieldset>
      <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
        <NumberField
          name="limits.shopMinutes"
          label="Shop time allowed, min"
          hint="Simulated: every step costs some."
        />
        <NumberField name="limits.actions" label="Actions allowed" hint="A reading takes about three." />
        <NumberField name="par.shopMinutes" label="Par, min" hint="What an experienced hand needs." />
        <NumberField name="par.readings" label="Par, readings" hint="The scale of the efficiency line." />
      </div>
      <Checkbox
        label="Ask for a prediction before each reading"
        hint="The learner says what they expect before the meter shows it."
        {...register("requirePrediction")}
      />
    </Section>
  );
}

function StartCondition({ condition }: { readonly condition: Condition }) {
  const { control, register } = useFormContext<ScenarioForm>();
  const name = `startConditions.${condition.name}` as const;
  const message = useFieldMessage(name);
  if (condition.kind === "choice") {
    const usual =
      condition.options.find(({ value }) => value === condition.initial)?.title ?? condition.initial;
    return (
      <div data-path={name}>
        <Field label={condition.title} error={message}>
          <Select {...register(name, { setValueAs: (value) => (value === "" ? null : value) })}>
            <option value="">as usual: {usual.toLowerCase()}</option>
            {condition.options.map(({ value, title }) => (
              <option key={value} value={value}>
                {title}
              </option>
            ))}
          </Select>
        </Field>
      </div>
    );
  }
  const { minimum, maximum, unit, initial, fixed } = condition;
  return (
    <div data-path={name}>
      <Controller
        control={control}
        name={name}
        render={({ field }) => (
          <Field
            label={`${condition.title}${unit === "" ? "" : `, ${unit}`}`}
            hint={`${minimum} to ${maximum}. Empty: ${fixed === true ? "drawn for each learner" : String(initial)}.`}
            error={message}
          >
            <NumberInput field={field} />
          </Field>
        )}
      />
    </div>
  );
}
