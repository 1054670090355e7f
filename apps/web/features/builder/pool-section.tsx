"use client";

import { useFieldArray, useFormContext, useWatch } from "react-hook-form";
import { Button } from "@/components/button";
import type { BuilderView } from "./builder-view";
import { CandidateCard } from "./candidate-card";
import { useFieldMessage } from "./messages";
import { emptyCandidate, type ScenarioForm } from "./scenario-form";
import { Section } from "./section";

/** The candidate causes: one is drawn for each learner, in proportion to its weight. */
export function PoolSection({ places, conditions }: Pick<BuilderView["vehicle"], "places" | "conditions">) {
  const { control } = useFormContext<ScenarioForm>();
  const { fields, append, remove } = useFieldArray({ control, name: "pool" });
  const weights = useWatch({ control, name: "pool" }).map(({ weight }) => Number(weight) || 0);
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const message = useFieldMessage("pool");
  return (
    <Section
      id="builder-pool"
      title="What can be wrong"
      lead="Each learner gets one of these candidates, drawn by weight. More than one makes a job that cannot be passed on by hearsay."
    >
      <div data-path="pool" className="space-y-6">
        {fields.map((field, index) => (
          <CandidateCard
            key={field.id}
            index={index}
            places={places}
            conditions={conditions}
            share={sum === 0 ? undefined : (weights[index] ?? 0) / sum}
            {...(fields.length > 1 ? { onRemove: () => remove(index) } : {})}
          />
        ))}
        {fields.length === 0 && message !== undefined && (
          <p className="text-sm font-semibold">Add at least one candidate.</p>
        )}
        <Button onClick={() => append(emptyCandidate())}>Add a candidate</Button>
      </div>
    </Section>
  );
}
