"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { UseFormReturn } from "react-hook-form";
import { ApiProblem, callApi } from "@/features/http/api-client";
import type { Problem } from "@/features/http/problem";
import { type BuilderView, draftSavedSchema, type ScenarioMessage } from "./builder-view";
import { type ScenarioForm, toDocument } from "./scenario-form";

export type SaveState =
  | { readonly kind: "saved" }
  | { readonly kind: "unsaved" }
  | { readonly kind: "saving" }
  | { readonly kind: "failed"; readonly problem: Problem };

/** After this pause in typing the draft goes to the server. */
const pauseMilliseconds = 1200;

export interface Draft {
  readonly state: SaveState;
  readonly savedAt: string;
  readonly messages: readonly ScenarioMessage[];
  /** Saves what the form holds now. Answers whether it is on the server, with the moment of that save. */
  readonly save: (options?: { overwrite?: boolean }) => Promise<string | undefined>;
}

/**
 * Keeps the draft on the server as it is typed. One save at a time; a change made meanwhile is saved after it. When the
 * draft changed elsewhere nothing is overwritten until the author says so.
 */
export function useDraft(
  { scenarioId, savedAt: initialSavedAt, messages: initialMessages }: BuilderView,
  form: Pick<UseFormReturn<ScenarioForm>, "getValues" | "subscribe">,
): Draft {
  const [state, setState] = useState<SaveState>({ kind: "saved" });
  const [savedAt, setSavedAt] = useState(initialSavedAt);
  const [messages, setMessages] = useState<readonly ScenarioMessage[]>(initialMessages);
  const seenAt = useRef(initialSavedAt);
  const running = useRef<Promise<string | undefined>>(undefined);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const stopped = useRef(false);
  const changes = useRef(0);

  const send = useCallback(
    async (overwrite: boolean): Promise<string | undefined> => {
      const change = changes.current;
      setState({ kind: "saving" });
      try {
        const answer = await callApi(`/api/scenarios/${scenarioId}/draft`, {
          method: "PUT",
          body: { seenAt: overwrite ? null : seenAt.current, document: toDocument(form.getValues()) },
          answer: draftSavedSchema,
        });
        seenAt.current = answer.savedAt;
        stopped.current = false;
        setSavedAt(answer.savedAt);
        setMessages(answer.messages);
        setState({ kind: change === changes.current ? "saved" : "unsaved" });
        return answer.savedAt;
      } catch (error) {
        if (!(error instanceof ApiProblem)) throw error;
        // Saving on against a conflict would only repeat it; everything else is tried again with the next change.
        stopped.current = error.code === "conflict";
        setState({ kind: "failed", problem: error.problem });
        return undefined;
      }
    },
    [scenarioId, form],
  );

  const save = useCallback(
    async ({ overwrite = false }: { overwrite?: boolean } = {}): Promise<string | undefined> => {
      clearTimeout(timer.current);
      await running.current;
      running.current = send(overwrite);
      const saved = await running.current;
      running.current = undefined;
      return saved;
    },
    [send],
  );

  useEffect(
    () =>
      form.subscribe({
        formState: { values: true },
        callback: () => {
          changes.current += 1;
          if (stopped.current) return;
          setState((before) => (before.kind === "saving" ? before : { kind: "unsaved" }));
          clearTimeout(timer.current);
          timer.current = setTimeout(() => void save(), pauseMilliseconds);
        },
      }),
    [form, save],
  );

  // Leaving with something unsaved asks first.
  useEffect(() => {
    const beforeLeaving = (event: BeforeUnloadEvent) => {
      if (timer.current !== undefined && state.kind !== "saved") event.preventDefault();
    };
    window.addEventListener("beforeunload", beforeLeaving);
    return () => window.removeEventListener("beforeunload", beforeLeaving);
  }, [state.kind]);

  useEffect(() => () => clearTimeout(timer.current), []);

  return { state, savedAt, messages, save };
}
