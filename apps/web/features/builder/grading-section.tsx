"use client";

import { useFormContext } from "react-hook-form";
import { PresetButtons } from "@/features/assignments/preset-buttons";
import { WeightFields } from "@/features/assignments/weight-fields";
import { NumberField } from "./fields";
import { useFieldMessage } from "./messages";
import type { ScenarioForm } from "./scenario-form";
import { Section } from "./section";

export function GradingSection() {
  const { control, setValue } = useFormContext<ScenarioForm>();
  return (
    <Section
      id="builder-grading"
      title="Grading"
      lead="The usual weights and pass mark. Whoever hands the scenario out can set others."
    >
      <PresetButtons
        onChoose={({ weights, passMark }) => {
          setValue("weights", { ...weights }, { shouldDirty: true });
          setValue("passMark", passMark, { shouldDirty: true });
        }}
      />
      <WeightFields control={control} name="weights" message={useFieldMessage("weights")} />
      <NumberField name="passMark" label="Pass mark, %" className="max-w-48" />
    </Section>
  );
}
