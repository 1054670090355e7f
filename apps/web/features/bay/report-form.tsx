"use client";

import {
  type Command,
  causeKinds,
  correctionActions,
  type LearnerView,
  type Report,
} from "@probeworthy/evaluation";
import { type FormEvent, useRef, useState } from "react";
import { Button } from "@/components/button";
import { Dialog, DialogClose } from "@/components/dialog";
import { Field } from "@/components/field";
import { Select, TextArea } from "@/components/inputs";
import { NoticeLine } from "./notice-line";
import { PlacePicker } from "./place-picker";
import { causeKindTitles, correctionTitles } from "./report-words";
import type { Notice } from "./use-attempt";
import { type CheckedReport, checkReport, useReportDraft } from "./use-report-draft";

export interface ReportFormProps {
  readonly attemptId: string;
  readonly view: LearnerView;
  readonly notice: Notice | undefined;
  readonly pending: Command["type"] | undefined;
  /** Resolves to true once the report is handed in. */
  readonly onSubmit: (report: Report) => Promise<boolean>;
}

type Errors = Extract<CheckedReport, { ok: false }>["error"];

/** Concern, cause, correction: written while working, handed in once. */
export function ReportForm({ attemptId, view, notice, pending, onSubmit }: ReportFormProps) {
  const { draft, change, forget } = useReportDraft(attemptId);
  const [errors, setErrors] = useState<Errors>({});
  const [ready, setReady] = useState<Report>();
  const form = useRef<HTMLFormElement>(null);
  const nothingWrong = draft.causeKind === "workingAsDesigned";
  const explains = draft.correctionAction === "explainToCustomer";
  const errorOf = (field: keyof Errors) => (errors[field] === undefined ? {} : { error: errors[field] });

  const check = (event: FormEvent) => {
    event.preventDefault();
    const checked = checkReport(draft);
    if (checked.ok) {
      setErrors({});
      setReady(checked.value);
      return;
    }
    setErrors(checked.error);
    requestAnimationFrame(() => form.current?.querySelector<HTMLElement>("[aria-invalid=true]")?.focus());
  };
  const submit = async () => {
    if (ready === undefined) return;
    const done = await onSubmit(ready);
    setReady(undefined);
    if (done) forget();
  };

  return (
    <form ref={form} onSubmit={check} noValidate className="max-w-3xl space-y-5">
      <p className="text-ink-soft">What you write is kept in this browser until you hand it in.</p>
      <Field
        label="Concern"
        hint="What the customer complains about, and what you found of it yourself."
        {...errorOf("concern")}
      >
        <TextArea
          rows={3}
          value={draft.concern}
          onChange={(event) => change({ concern: event.target.value })}
        />
      </Field>
      <fieldset className="space-y-4 border-t border-ink pt-3">
        <legend className="pr-3 text-lg font-semibold">Cause</legend>
        <Field label="Kind of fault" {...errorOf("causeKind")}>
          <Select value={draft.causeKind} onChange={(event) => change({ causeKind: event.target.value })}>
            <option value="">Choose</option>
            {causeKinds.map((kind) => (
              <option key={kind} value={kind}>
                {causeKindTitles[kind]}
              </option>
            ))}
          </Select>
        </Field>
        {!nothingWrong && (
          <PlacePicker
            label="Place of the cause"
            places={view.places}
            value={draft.causePlace}
            onChoose={(causePlace) =>
              // Most repairs are made where the cause sits; a place chosen otherwise stays.
              change(
                draft.correctionPlace === draft.causePlace
                  ? { causePlace, correctionPlace: causePlace }
                  : { causePlace },
              )
            }
            error={errors.causePlace}
          />
        )}
        <Field
          label="What shows it"
          hint="Name the readings, with their lines in the log."
          {...errorOf("causeExplanation")}
        >
          <TextArea
            rows={4}
            value={draft.causeExplanation}
            onChange={(event) => change({ causeExplanation: event.target.value })}
          />
        </Field>
      </fieldset>
      <fieldset className="space-y-4 border-t border-ink pt-3">
        <legend className="pr-3 text-lg font-semibold">Correction</legend>
        <Field label="What is to be done" {...errorOf("correctionAction")}>
          <Select
            value={draft.correctionAction}
            onChange={(event) => change({ correctionAction: event.target.value })}
          >
            <option value="">Choose</option>
            {correctionActions.map((action) => (
              <option key={action} value={action}>
                {correctionTitles[action]}
              </option>
            ))}
          </Select>
        </Field>
        {!explains && (
          <PlacePicker
            label="Place of the repair"
            places={view.places}
            value={draft.correctionPlace}
            onChoose={(correctionPlace) => change({ correctionPlace })}
            error={errors.correctionPlace}
          />
        )}
        <Field
          label="How, and how you would prove the repair"
          required={false}
          {...errorOf("correctionExplanation")}
        >
          <TextArea
            rows={3}
            value={draft.correctionExplanation}
            onChange={(event) => change({ correctionExplanation: event.target.value })}
          />
        </Field>
      </fieldset>
      <Button type="submit" kind="primary" busy={pending === "submitReport"}>
        Hand in the report
      </Button>
      {Object.keys(errors).length > 0 && (
        <p role="alert" className="font-semibold">
          Some parts are missing; each is marked above.
        </p>
      )}
      <NoticeLine notice={notice} about={["submitReport"]} />
      <Dialog
        title="Hand in the report?"
        description="The job is then closed: no more readings, and the report cannot be changed."
        open={ready !== undefined}
        onOpenChange={(open) => !open && setReady(undefined)}
        actions={
          <>
            <DialogClose>
              <Button>Go on working</Button>
            </DialogClose>
            <Button kind="primary" busy={pending === "submitReport"} onClick={() => void submit()}>
              Hand in now
            </Button>
          </>
        }
      />
    </form>
  );
}
