"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useRouter } from "next/navigation";
import { useForm } from "react-hook-form";
import { z } from "zod";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { TextArea, TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { emptyAsNull } from "@/features/forms/form-values";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { type OverrideInput, overrideInputSchema } from "./override-input";

export interface OverrideFormProps {
  readonly attemptId: string;
  readonly score: number;
  /** A decision stands and can be taken back. */
  readonly stands: boolean;
}

// In this form a score is needed; taking back is a button of its own.
const formSchema = overrideInputSchema.extend({ score: overrideInputSchema.shape.score.unwrap() });

export function OverrideForm({ attemptId, score, stands }: OverrideFormProps) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const form = useForm({ resolver: zodResolver(formSchema), defaultValues: { score, reason: "" } });
  const { errors } = form.formState;
  const send = (input: OverrideInput) =>
    run(async () => {
      await postJson(`/api/attempts/${attemptId}/override`, input, z.undefined());
      form.resetField("reason");
      router.refresh();
    });
  const withdraw = async () => {
    if (await form.trigger("reason")) await send({ score: null, reason: form.getValues("reason") });
  };
  return (
    <form onSubmit={(event) => void form.handleSubmit(send)(event)} noValidate className="max-w-xl space-y-4">
      {problem !== undefined && <ProblemNotice problem={problem} />}
      <Field label="Score" required hint="0 to 100" error={errors.score?.message} className="max-w-40">
        <TextInput inputMode="decimal" {...form.register("score", { setValueAs: emptyAsNull })} />
      </Field>
      <Field
        label="Reason"
        required
        hint="Kept for good with your name and the time; the learner reads it."
        error={errors.reason?.message}
      >
        <TextArea rows={3} maxLength={2000} {...form.register("reason")} />
      </Field>
      <div className="flex flex-wrap gap-3">
        <Button type="submit" kind="primary" busy={busy}>
          Set the score
        </Button>
        {stands && (
          <Button busy={busy} onClick={() => void withdraw()}>
            Let the computed score count again
          </Button>
        )}
      </div>
    </form>
  );
}
