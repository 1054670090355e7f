"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useRouter } from "next/navigation";
import { useForm } from "react-hook-form";
import { z } from "zod";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { Select, TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { type NewScenario, newScenarioSchema } from "@/features/builder/draft-input";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import type { NewScenarioOptions } from "./new-scenario-view";

export interface NewScenarioFormProps {
  readonly options: NewScenarioOptions;
  readonly copyOf: string | undefined;
}

export function NewScenarioForm({ options, copyOf }: NewScenarioFormProps) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const source = options.scenarios.find(({ id }) => id === copyOf);
  const form = useForm<NewScenario>({
    resolver: zodResolver(newScenarioSchema),
    defaultValues: {
      title: source === undefined ? "" : `${source.title}, our version`.slice(0, 120),
      vehicleId: source?.vehicleId ?? options.vehicles[0]?.id ?? "",
      copyOf: source?.id ?? null,
    },
  });
  const { register, watch, setValue } = form;
  const { errors } = form.formState;
  const vehicleId = watch("vehicleId");
  const create = form.handleSubmit((values) =>
    run(async () => {
      const { id } = await postJson("/api/scenarios", values, z.strictObject({ id: z.string() }));
      router.push(`/scenarios/${id}/edit`);
    }),
  );
  return (
    <form onSubmit={(event) => void create(event)} noValidate className="max-w-xl space-y-4">
      {problem !== undefined && <ProblemNotice problem={problem} />}
      <Field label="Title" required hint="For staff, in lists." error={errors.title?.message}>
        <TextInput maxLength={120} {...register("title")} />
      </Field>
      <Field label="Vehicle" required error={errors.vehicleId?.message}>
        <Select {...register("vehicleId", { onChange: () => setValue("copyOf", null) })}>
          {options.vehicles.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Select>
      </Field>
      <Field label="Start from" error={errors.copyOf?.message}>
        <Select {...register("copyOf", { setValueAs: (value) => (value === "" ? null : value) })}>
          <option value="">nothing</option>
          {options.scenarios
            .filter((scenario) => scenario.vehicleId === vehicleId)
            .map(({ id, title }) => (
              <option key={id} value={id}>
                a copy of {title}
              </option>
            ))}
        </Select>
      </Field>
      <Button type="submit" kind="primary" busy={busy}>
        Go on to the builder
      </Button>
    </form>
  );
}
