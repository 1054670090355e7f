"use client";

import { useFieldArray, useFormContext } from "react-hook-form";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { Select } from "@/components/inputs";
import { levelWords } from "@/features/wording/terms";
import type { BuilderView } from "./builder-view";
import { TextField } from "./fields";
import { useFieldMessage } from "./messages";
import type { ScenarioForm } from "./scenario-form";
import { Section } from "./section";

/** What the job is about and what the customer says. */
export function StorySection({ vehicle }: { readonly vehicle: BuilderView["vehicle"] }) {
  const { register, control } = useFormContext<ScenarioForm>();
  const { fields, append, remove } = useFieldArray({ control, name: "complaints" });
  const complaintsMessage = useFieldMessage("complaints");
  return (
    <Section id="builder-story" title="The job">
      <div className="grid gap-4 lg:grid-cols-2">
        <TextField
          name="title"
          label="Title"
          hint="For staff, in lists. Learners read the assignment's title."
        />
        <div className="grid gap-4 sm:grid-cols-2">
          <div data-path="system">
            <Field label="System" error={useFieldMessage("system")} hint={vehicle.title}>
              <Select {...register("system")}>
                {vehicle.systems.map(({ id, title }) => (
                  <option key={id} value={id}>
                    {title}
                  </option>
                ))}
              </Select>
            </Field>
          </div>
          <div data-path="level">
            <Field label="Level" hint="For lists only." error={useFieldMessage("level")}>
              <Select {...register("level")}>
                {Object.entries(levelWords).map(([level, words]) => (
                  <option key={level} value={level}>
                    {words}
                  </option>
                ))}
              </Select>
            </Field>
          </div>
        </div>
        <TextField
          name="learningGoal"
          label="Learning goal"
          rows={3}
          hint="What somebody can do afterwards."
        />
        <TextField
          name="instructorNote"
          label="Your note"
          rows={3}
          hint="How a good technician goes about it. Only staff read it."
        />
      </div>
      <fieldset data-path="complaints" className="space-y-3">
        <legend className="font-semibold">What the customer says</legend>
        <p className="text-sm text-ink-soft">One wording is drawn for each learner. Give no cause away.</p>
        {fields.map((field, index) => (
          <div key={field.id} className="flex items-end gap-3">
            <TextField
              name={`complaints.${index}.text`}
              label={`Wording ${index + 1}`}
              rows={2}
              className="flex-1"
            />
            <Button
              aria-label={`Remove wording ${index + 1}`}
              disabled={fields.length === 1}
              onClick={() => remove(index)}
            >
              Remove
            </Button>
          </div>
        ))}
        {complaintsMessage !== undefined && (
          <p className="text-sm font-semibold">
            {fields.length === 0 ? "Add at least one wording." : complaintsMessage}
          </p>
        )}
        <Button onClick={() => append({ text: "" })}>Add a wording</Button>
      </fieldset>
    </Section>
  );
}
