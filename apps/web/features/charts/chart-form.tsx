"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useRouter } from "next/navigation";
import { useForm } from "react-hook-form";
import { z } from "zod";
import { Button } from "@/components/button";
import { buttonClass } from "@/components/button-class";
import { Field } from "@/components/field";
import { TextArea, TextInput } from "@/components/inputs";
import { ProblemNotice } from "@/components/problem-notice";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import { chartInputSchema } from "./chart-input";

const answerSchema = z.strictObject({ id: z.string(), differs: z.number(), rows: z.number() });

export function ChartForm({ vehicleId }: { readonly vehicleId: string }) {
  const router = useRouter();
  const { busy, problem, run } = useCall();
  const form = useForm({ resolver: zodResolver(chartInputSchema), defaultValues: { name: "", csv: "" } });
  const { errors } = form.formState;
  const read = async (file: File | undefined) => {
    if (file === undefined) return;
    form.setValue("csv", await file.text(), { shouldValidate: true });
    if (form.getValues("name") === "") form.setValue("name", file.name.replace(/\.csv$/i, ""));
  };
  const check = form.handleSubmit((values) =>
    run(async () => {
      const { id } = await postJson(`/api/vehicles/${vehicleId}/charts`, values, answerSchema);
      router.push(`/vehicles/${vehicleId}/charts/${id}`);
      router.refresh();
    }),
  );
  return (
    <section aria-labelledby="chart-new" className="min-w-0 space-y-4">
      <h2 id="chart-new">Check a chart</h2>
      {problem !== undefined && <ProblemNotice problem={problem} />}
      <form onSubmit={(event) => void check(event)} noValidate className="space-y-4">
        <Field label="Name" required hint="For example the manual and its page." error={errors.name?.message}>
          <TextInput maxLength={120} {...form.register("name")} />
        </Field>
        <Field label="CSV file" required={false}>
          <TextInput
            type="file"
            accept=".csv,text/csv,text/plain"
            onChange={(event) => void read(event.target.files?.[0])}
          />
        </Field>
        <Field
          label="Chart"
          required
          hint="Filled from the file, or paste it here."
          error={errors.csv?.message}
        >
          <TextArea
            rows={10}
            spellCheck={false}
            wrap="off"
            className="font-mono text-sm"
            placeholder={
              'terminal,function,condition,expected low,expected high,unit\nX10.3,Ignition feed,"key=on",11.5,12.9,V'
            }
            {...form.register("csv")}
          />
        </Field>
        <div className="flex flex-wrap gap-3">
          <Button type="submit" kind="primary" busy={busy}>
            {busy ? "Simulating every row…" : "Check it"}
          </Button>
          <a href={`/api/vehicles/${vehicleId}/charts/example`} download className={buttonClass("quiet")}>
            Download an example
          </a>
        </div>
      </form>
    </section>
  );
}
