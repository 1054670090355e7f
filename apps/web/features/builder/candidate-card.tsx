"use client";

import { useFieldArray, useFormContext } from "react-hook-form";
import { Button } from "@/components/button";
import { Checkbox } from "@/components/inputs";
import type { BuilderView } from "./builder-view";
import { FaultEditor } from "./fault-editor";
import { NumberField, TextField } from "./fields";
import { emptyFault, type ScenarioForm } from "./scenario-form";

export interface CandidateCardProps {
  readonly index: number;
  readonly places: BuilderView["vehicle"]["places"];
  readonly conditions: BuilderView["vehicle"]["conditions"];
  /** How often it is drawn, 0 to 1; undefined while no weight is set. */
  readonly share: number | undefined;
  readonly onRemove?: () => void;
}

export function CandidateCard({ index, places, conditions, share, onRemove }: CandidateCardProps) {
  const { control, register } = useFormContext<ScenarioForm>();
  const { fields, append, remove } = useFieldArray({ control, name: `pool.${index}.faults` });
  return (
    <section
      aria-label={`Candidate ${index + 1}`}
      data-path={`pool.${index}`}
      className="space-y-4 border border-edge p-4"
    >
      <div className="grid items-start gap-4 md:grid-cols-[1fr_10rem_auto]">
        <TextField
          name={`pool.${index}.title`}
          label={`Candidate ${index + 1}: title`}
          hint="What the result calls it once the report is in."
        />
        <NumberField
          name={`pool.${index}.weight`}
          label="Weight"
          hint={share === undefined ? "Above 0." : `Drawn in ${(100 * share).toFixed(0)} % of jobs.`}
        />
        {onRemove !== undefined && (
          <Button
            className="justify-self-start md:mt-[3.1rem]"
            aria-label={`Remove candidate ${index + 1}`}
            onClick={onRemove}
          >
            Remove
          </Button>
        )}
      </div>
      {fields.map((field, fault) => (
        <FaultEditor
          key={field.id}
          path={`pool.${index}.faults.${fault}`}
          number={fault + 1}
          places={places}
          conditions={conditions}
          onRemove={() => remove(fault)}
        />
      ))}
      {fields.length === 0 && (
        <p data-path={`pool.${index}.faults`} className="border border-dashed border-edge p-4">
          No fault: this car is in order, and the right answer is that it works as designed.
        </p>
      )}
      <div className="flex flex-wrap items-center gap-x-6 gap-y-2">
        <Button onClick={() => append(emptyFault())}>
          {fields.length === 0 ? "Add a fault" : "Add a second fault at the same time"}
        </Button>
        <Checkbox
          label="Surprising but normal"
          hint="The right answer is “works as designed”."
          {...register(`pool.${index}.normal`)}
        />
      </div>
    </section>
  );
}
