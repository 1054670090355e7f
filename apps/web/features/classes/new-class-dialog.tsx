"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useRouter } from "next/navigation";
import { useForm } from "react-hook-form";
import { z } from "zod";
import { Button } from "@/components/button";
import { Dialog } from "@/components/dialog";
import { Field } from "@/components/field";
import { TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { classInputSchema } from "./class-input";

const formId = "new-class";

export function NewClassDialog() {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const form = useForm({ resolver: zodResolver(classInputSchema), defaultValues: { title: "", term: "" } });
  const { errors } = form.formState;
  const create = form.handleSubmit((values) =>
    run(async () => {
      const { id } = await postJson("/api/classes", values, z.strictObject({ id: z.string() }));
      router.push(`/classes/${id}?tab=learners`);
    }),
  );
  return (
    <Dialog
      title="New class"
      trigger={<Button kind="primary">New class</Button>}
      actions={
        <Button kind="primary" type="submit" form={formId} busy={busy}>
          Make the class
        </Button>
      }
    >
      <form id={formId} onSubmit={(event) => void create(event)} noValidate className="space-y-4">
        {problem !== undefined && <ProblemNotice problem={problem} />}
        <Field label="Name" hint="As it stands on the timetable." required error={errors.title?.message}>
          <TextInput {...form.register("title")} maxLength={120} />
        </Field>
        <Field label="Term" required error={errors.term?.message}>
          <TextInput {...form.register("term")} maxLength={60} placeholder="Spring 2027" />
        </Field>
      </form>
    </Dialog>
  );
}
