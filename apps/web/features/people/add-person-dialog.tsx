"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useRouter } from "next/navigation";
import { useState } from "react";
import { useForm } from "react-hook-form";
import { Button } from "@/components/button";
import { Dialog, DialogClose } from "@/components/dialog";
import { Field } from "@/components/field";
import { Select, TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { roleWords } from "@/features/wording/terms";
import { FirstPassword } from "./first-password";
import { type PersonInput, personAddedSchema, personInputSchema, roleNames } from "./person-input";

export function AddPersonDialog() {
  const router = useRouter();
  const [open, setOpen] = useState(false);
  const [added, setAdded] = useState<{ name: string; password: string }>();
  const { busy, problem, run, clear } = useCall();
  const form = useForm<PersonInput>({
    resolver: zodResolver(personInputSchema),
    defaultValues: { name: "", email: "", role: "learner" },
  });
  const { errors } = form.formState;
  const change = (next: boolean) => {
    setOpen(next);
    if (next) return;
    setAdded(undefined);
    clear();
    form.reset();
  };
  const add = form.handleSubmit((values) =>
    run(async () => {
      const { password } = await postJson("/api/people", values, personAddedSchema);
      setAdded({ name: values.name, password });
      router.refresh();
    }),
  );
  return (
    <Dialog
      title={added === undefined ? "Add a person" : `${added.name} is added`}
      trigger={<Button kind="primary">Add a person</Button>}
      open={open}
      onOpenChange={change}
      {...(added === undefined
        ? {}
        : {
            actions: (
              <DialogClose>
                <Button kind="primary">Done</Button>
              </DialogClose>
            ),
          })}
    >
      {added !== undefined ? (
        <FirstPassword {...added} />
      ) : (
        <form onSubmit={(event) => void add(event)} noValidate className="space-y-4">
          {problem !== undefined && <ProblemNotice problem={problem} />}
          <Field label="Name" required error={errors.name?.message}>
            <TextInput autoComplete="off" maxLength={120} {...form.register("name")} />
          </Field>
          <Field label="E-mail" required error={errors.email?.message}>
            <TextInput type="email" autoComplete="off" maxLength={320} {...form.register("email")} />
          </Field>
          <Field label="Role" required error={errors.role?.message}>
            <Select {...form.register("role")}>
              {roleNames.map((role) => (
                <option key={role} value={role}>
                  {roleWords[role]}
                </option>
              ))}
            </Select>
          </Field>
          <Button type="submit" kind="primary" busy={busy} className="w-full">
            Add
          </Button>
        </form>
      )}
    </Dialog>
  );
}
