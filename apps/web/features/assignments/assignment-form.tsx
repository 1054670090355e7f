"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useRouter } from "next/navigation";
import { useForm } from "react-hook-form";
import { z } from "zod";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { Radio, Select, TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { emptyAsNull, toInstant } from "@/features/forms/form-values";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { levelWords, modeWords, revealWords } from "@/features/wording/terms";
import {
  type AssignmentInput,
  assignmentInputSchema,
  assignmentModes,
  revealPolicies,
} from "./assignment-input";
import type { AssignmentOptions } from "./assignment-options-view";
import { PresetButtons } from "./preset-buttons";
import { WeightFields } from "./weight-fields";

const modeHints = {
  practice: "as often as they like, with the reasons at once",
  test: "once, in a window, with the reasons when it closes",
  check: "a single check of skill, with the reasons kept by you",
} as const;

/** What a kind of work usually means; every field can be changed afterwards. */
const usualTerms = {
  practice: { attemptLimit: null, reveal: "after_submission" },
  test: { attemptLimit: 1, reveal: "after_close" },
  check: { attemptLimit: 1, reveal: "never" },
} as const;

export interface AssignmentFormProps {
  readonly options: AssignmentOptions;
  readonly scenarioId: string | undefined;
}

export function AssignmentForm({ options, scenarioId }: AssignmentFormProps) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const { scenarios, classId } = options;
  const first = scenarios.find((one) => one.scenarioId === scenarioId);
  const usual = first ?? scenarios[0];
  const form = useForm<AssignmentInput>({
    resolver: zodResolver(assignmentInputSchema),
    mode: "onTouched",
    defaultValues: {
      scenarioVersionId: first?.versionId ?? "",
      title: "",
      mode: "practice",
      opensAt: null,
      closesAt: null,
      ...usualTerms.practice,
      passMark: usual?.passMark ?? 70,
      weights: usual?.weights ?? { cause: 40, method: 25, safety: 10, efficiency: 15, report: 10 },
    },
  });
  const { register, setValue, watch, formState } = form;
  const { errors } = formState;
  const chosen = scenarios.find(({ versionId }) => versionId === watch("scenarioVersionId"));
  const create = form.handleSubmit((values) =>
    run(async () => {
      await postJson(`/api/classes/${classId}/assignments`, values, z.strictObject({ id: z.string() }));
      router.push(`/classes/${classId}?tab=assignments`);
    }),
  );
  const chooseScenario = (versionId: string) => {
    const option = scenarios.find((one) => one.versionId === versionId);
    if (option === undefined) return;
    setValue("weights", option.weights, { shouldValidate: true });
    setValue("passMark", option.passMark, { shouldValidate: true });
  };
  return (
    <form onSubmit={(event) => void create(event)} noValidate className="max-w-3xl space-y-8">
      {problem !== undefined && <ProblemNotice problem={problem} />}
      <div className="space-y-4">
        <Field
          label="Scenario"
          required
          error={errors.scenarioVersionId?.message}
          hint={
            chosen === undefined
              ? "Only published scenarios are listed."
              : `${chosen.goal} About ${chosen.shopMinutes} minutes of shop time.`
          }
        >
          <Select
            {...register("scenarioVersionId", {
              onChange: (event) => chooseScenario(String(event.target.value)),
            })}
          >
            <option value="">Choose a scenario</option>
            {scenarios.map((one) => (
              <option key={one.versionId} value={one.versionId}>
                {one.title} ({levelWords[one.level]}, version {one.number})
              </option>
            ))}
          </Select>
        </Field>
        <Field
          label="Title for learners"
          required
          hint="What stands on the job list. Use the customer's words and do not give the cause away."
          error={errors.title?.message}
        >
          <TextInput
            {...register("title")}
            maxLength={160}
            placeholder="Job 4: steering heavy when parking"
          />
        </Field>
      </div>
      <fieldset>
        <legend className="mb-1 font-semibold">Kind of work</legend>
        {assignmentModes.map((mode) => (
          <Radio
            key={mode}
            value={mode}
            label={modeWords[mode]}
            hint={modeHints[mode]}
            {...register("mode", {
              onChange: (event) => {
                if (event.target.value !== mode) return;
                setValue("attemptLimit", usualTerms[mode].attemptLimit, { shouldValidate: true });
                setValue("reveal", usualTerms[mode].reveal, { shouldValidate: formState.isSubmitted });
              },
            })}
          />
        ))}
      </fieldset>
      <div className="grid gap-4 sm:grid-cols-2">
        <Field label="Opens" required={false} hint="Empty: at once." error={errors.opensAt?.message}>
          <TextInput type="datetime-local" {...register("opensAt", { setValueAs: toInstant })} />
        </Field>
        <Field label="Closes" required={false} hint="Empty: never." error={errors.closesAt?.message}>
          <TextInput type="datetime-local" {...register("closesAt", { setValueAs: toInstant })} />
        </Field>
        <Field
          label="Attempts each"
          required={false}
          hint="Empty: no limit."
          error={errors.attemptLimit?.message}
        >
          <TextInput inputMode="numeric" {...register("attemptLimit", { setValueAs: emptyAsNull })} />
        </Field>
        <Field label="Pass mark, %" required hint="Of 100 points." error={errors.passMark?.message}>
          <TextInput inputMode="decimal" {...register("passMark", { setValueAs: emptyAsNull })} />
        </Field>
      </div>
      <PresetButtons
        onChoose={({ weights, passMark }) => {
          setValue("weights", { ...weights }, { shouldValidate: true });
          setValue("passMark", passMark, { shouldValidate: true });
        }}
      />
      <WeightFields
        control={form.control}
        name="weights"
        message={
          (errors.weights as { message?: string } | undefined)?.message ?? errors.weights?.root?.message
        }
      />
      <Field
        label="Learners see reasons and the true fault"
        required
        error={errors.reveal?.message}
        className="max-w-md"
      >
        <Select {...register("reveal")}>
          {revealPolicies.map((policy) => (
            <option key={policy} value={policy}>
              {revealWords[policy]}
            </option>
          ))}
        </Select>
      </Field>
      <Button type="submit" kind="primary" busy={busy}>
        Hand it out
      </Button>
    </form>
  );
}
