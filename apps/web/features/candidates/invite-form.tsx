"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useForm } from "react-hook-form";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { Select, TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { emptyAsNull } from "@/features/forms/form-values";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { levelWords } from "@/features/wording/terms";
import { type CandidateInput, candidateInputSchema, invitedSchema } from "./candidate-input";
import type { CandidatesView } from "./candidates-view";

export interface InviteFormProps {
  readonly checks: CandidatesView["checks"];
  readonly onInvited: (invited: { readonly name: string; readonly path: string }) => void;
}

export function InviteForm({ checks, onInvited }: InviteFormProps) {
  const { busy, problem, run } = useCall();
  const form = useForm<CandidateInput>({
    resolver: zodResolver(candidateInputSchema),
    mode: "onTouched",
    defaultValues: {
      name: "",
      email: "",
      scenarioVersionId: "",
      title: "Skills check: power steering",
      passMark: 70,
      days: 7,
      reveal: "never",
    },
  });
  const { register, setValue, watch } = form;
  const { errors } = form.formState;
  const chosen = checks.find(({ versionId }) => versionId === watch("scenarioVersionId"));
  const invite = form.handleSubmit((values) =>
    run(async () => {
      const { path } = await postJson("/api/candidates", values, invitedSchema);
      onInvited({ name: values.name, path });
    }),
  );
  return (
    <form onSubmit={(event) => void invite(event)} noValidate className="space-y-4">
      {problem !== undefined && <ProblemNotice problem={problem} />}
      <Field label="Name" required error={errors.name?.message}>
        <TextInput autoComplete="off" maxLength={120} {...register("name")} />
      </Field>
      <Field label="E-mail" required error={errors.email?.message}>
        <TextInput type="email" autoComplete="off" maxLength={320} {...register("email")} />
      </Field>
      <Field
        label="Check"
        required
        error={errors.scenarioVersionId?.message}
        hint={
          chosen === undefined
            ? "A published scenario."
            : `${chosen.goal} About ${chosen.shopMinutes} minutes of shop time.`
        }
      >
        <Select
          {...register("scenarioVersionId", {
            onChange: (event) => {
              const check = checks.find(({ versionId }) => versionId === event.target.value);
              if (check !== undefined) setValue("passMark", check.passMark);
            },
          })}
        >
          <option value="">Choose a check</option>
          {checks.map((check) => (
            <option key={check.versionId} value={check.versionId}>
              {check.title} ({levelWords[check.level]})
            </option>
          ))}
        </Select>
      </Field>
      <Field
        label="Title for the candidate"
        required
        hint="Do not give the cause away."
        error={errors.title?.message}
      >
        <TextInput maxLength={160} {...register("title")} />
      </Field>
      <div className="grid gap-4 sm:grid-cols-2">
        <Field label="Pass mark, %" required error={errors.passMark?.message}>
          <TextInput inputMode="decimal" {...register("passMark", { setValueAs: emptyAsNull })} />
        </Field>
        <Field label="Link works for, days" required error={errors.days?.message}>
          <TextInput inputMode="numeric" {...register("days", { setValueAs: emptyAsNull })} />
        </Field>
      </div>
      <Field label="The candidate sees the result" required error={errors.reveal?.message}>
        <Select {...register("reveal")}>
          <option value="never">No, only we do</option>
          <option value="after_submission">Yes, with the reasons</option>
        </Select>
      </Field>
      <Button type="submit" kind="primary" busy={busy} className="w-full">
        {busy ? "Making the link…" : "Make the link"}
      </Button>
    </form>
  );
}
