"use client";

import { type Report, reportSchema } from "@probeworthy/evaluation";
import { useCallback, useEffect, useState } from "react";
import { z } from "zod";

/** A report while it is being written: everything may still be empty. */
export interface ReportDraft {
  readonly concern: string;
  readonly causeKind: string;
  readonly causePlace: string;
  readonly causeExplanation: string;
  readonly correctionAction: string;
  readonly correctionPlace: string;
  readonly correctionExplanation: string;
}

const emptyDraft: ReportDraft = {
  concern: "",
  causeKind: "",
  causePlace: "",
  causeExplanation: "",
  correctionAction: "",
  correctionPlace: "",
  correctionExplanation: "",
};
const text = z.string().catch("");
const draftSchema = z.object({
  concern: text,
  causeKind: text,
  causePlace: text,
  causeExplanation: text,
  correctionAction: text,
  correctionPlace: text,
  correctionExplanation: text,
});

const keyOf = (attemptId: string) => `probeworthy.report.${attemptId}`;

/** The draft lives in this browser, so that a reload or a lost connection costs nothing; it is gone once handed in. */
export function useReportDraft(attemptId: string) {
  const [draft, setDraft] = useState(emptyDraft);

  useEffect(() => {
    const stored = read(keyOf(attemptId));
    if (stored !== undefined) setDraft(stored);
  }, [attemptId]);

  const change = useCallback(
    (part: Partial<ReportDraft>) =>
      setDraft((previous) => {
        const next = { ...previous, ...part };
        write(keyOf(attemptId), JSON.stringify(next));
        return next;
      }),
    [attemptId],
  );
  const forget = useCallback(() => write(keyOf(attemptId), undefined), [attemptId]);
  return { draft, change, forget };
}

function read(key: string): ReportDraft | undefined {
  try {
    const stored = window.localStorage.getItem(key);
    return stored === null ? undefined : draftSchema.safeParse(JSON.parse(stored)).data;
  } catch {
    // Storage switched off, or text that is not ours: start with an empty form.
    return undefined;
  }
}

function write(key: string, value: string | undefined): void {
  try {
    if (value === undefined) window.localStorage.removeItem(key);
    else window.localStorage.setItem(key, value);
  } catch {
    // Storage full or switched off: the draft then lives as long as the page.
  }
}

export type CheckedReport =
  | { readonly ok: true; readonly value: Report }
  | { readonly ok: false; readonly error: Readonly<Partial<Record<keyof ReportDraft, string>>> };

/** Turns the draft into a report, or says per field what is missing. */
export function checkReport(draft: ReportDraft): CheckedReport {
  const nothingWrong = draft.causeKind === "workingAsDesigned";
  const parsed = reportSchema.safeParse({
    concern: draft.concern,
    cause: {
      kind: draft.causeKind,
      place: nothingWrong ? "" : draft.causePlace,
      explanation: draft.causeExplanation,
    },
    correction: {
      action: draft.correctionAction,
      place: draft.correctionAction === "explainToCustomer" ? "" : draft.correctionPlace,
      explanation: draft.correctionExplanation,
    },
  });
  const error: Partial<Record<keyof ReportDraft, string>> = {};
  if (!parsed.success) {
    for (const issue of parsed.error.issues) {
      const field = fieldOf[issue.path.join(".")];
      if (field !== undefined) error[field] ??= words[field] ?? issue.message;
    }
  }
  if (!nothingWrong && draft.causePlace === "") error.causePlace = "Choose the place where the cause sits.";
  if (draft.correctionAction !== "explainToCustomer" && draft.correctionPlace === "") {
    error.correctionPlace = "Choose the place where the repair is made.";
  }
  if (parsed.success && Object.keys(error).length === 0) return { ok: true, value: parsed.data };
  return { ok: false, error };
}

const fieldOf: Readonly<Record<string, keyof ReportDraft>> = {
  concern: "concern",
  "cause.kind": "causeKind",
  "cause.place": "causePlace",
  "cause.explanation": "causeExplanation",
  "correction.action": "correctionAction",
  "correction.place": "correctionPlace",
  "correction.explanation": "correctionExplanation",
};

const words: Partial<Record<keyof ReportDraft, string>> = {
  concern: "Say in a sentence what the customer's concern is and that you have confirmed it.",
  causeKind: "Choose what kind of fault it is.",
  causeExplanation: "Say which readings show it.",
  correctionAction: "Choose what is to be done.",
};
