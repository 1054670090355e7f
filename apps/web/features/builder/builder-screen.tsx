"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { scenarioSchema } from "@probeworthy/evaluation";
import { useRouter } from "next/navigation";
import { useState } from "react";
import { FormProvider, useForm } from "react-hook-form";
import { z } from "zod";
import { postJson } from "@/features/http/api-client";
import { useCall } from "@/features/http/use-call";
import type { BuilderView } from "./builder-view";
import { friendlyIssue, friendlyMessage } from "./friendly-issue";
import { GradingSection } from "./grading-section";
import { MessagesProvider } from "./messages";
import { PoolSection } from "./pool-section";
import { PreviewSection } from "./preview-section";
import { SavePanel } from "./save-panel";
import { fromDocument, type ScenarioForm, toDocument } from "./scenario-form";
import { StartSection } from "./start-section";
import { StorySection } from "./story-section";
import { useDraft } from "./use-draft";

/** The form's values are read as the document they stand for, so the paths of both are the same. */
const formSchema = z
  .custom<ScenarioForm>()
  .transform((form) => toDocument(form))
  .pipe(scenarioSchema);

export function BuilderScreen({ view }: { readonly view: BuilderView }) {
  const router = useRouter();
  const [initial] = useState(() => startForm(view));
  const form = useForm<ScenarioForm, unknown, z.output<typeof scenarioSchema>>({
    resolver: zodResolver(formSchema, { error: wordsOf }),
    mode: "onTouched",
    defaultValues: initial,
  });
  const draft = useDraft(view, form);
  const publishing = useCall();
  const publish = () =>
    publishing.run(async () => {
      const seenAt = await draft.save();
      if (seenAt === undefined || !(await form.trigger())) return;
      await postJson(
        `/api/scenarios/${view.scenarioId}/publish`,
        { seenAt },
        z.strictObject({ number: z.number() }),
      );
      router.push(`/scenarios/${view.scenarioId}`);
      router.refresh();
    });
  return (
    <FormProvider {...form}>
      <MessagesProvider messages={draft.messages}>
        <form
          noValidate
          onSubmit={(event) => event.preventDefault()}
          className="grid items-start gap-x-10 gap-y-8 xl:grid-cols-[minmax(0,1fr)_22rem]"
        >
          <div className="min-w-0 space-y-10">
            <StorySection vehicle={view.vehicle} />
            <PoolSection places={view.vehicle.places} conditions={view.vehicle.conditions} />
            <StartSection conditions={view.vehicle.conditions} />
            <GradingSection />
          </div>
          <SavePanel
            draft={draft}
            publishedNumber={view.publishedNumber}
            publishing={publishing.busy}
            problem={publishing.problem}
            onPublish={() => void publish()}
          />
          <div className="min-w-0 xl:col-span-2">
            <PreviewSection scenarioId={view.scenarioId} validate={() => form.trigger()} />
          </div>
        </form>
      </MessagesProvider>
    </FormProvider>
  );
}

function wordsOf(issue: z.core.$ZodRawIssue): string | undefined {
  const words = friendlyIssue(issue) ?? (typeof issue.message === "string" ? issue.message : undefined);
  return words === undefined ? undefined : friendlyMessage(words);
}

function startForm(view: BuilderView): ScenarioForm {
  const form = fromDocument(view.document);
  // Every condition of the vehicle has a field, also those the draft does not set.
  for (const { name } of view.vehicle.conditions) form.startConditions[name] ??= null;
  return form;
}
