"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import { ApiProblem, callApi } from "@/features/http/api-client";
import type { Problem } from "@/features/http/problem";
import { draftSavedSchema } from "../authoring-view";
import type { Draft } from "../fields/new-record";
import type { AuthoringMessage } from "./messages";

export type SaveState =
  | { readonly kind: "saved" | "unsaved" | "saving" | "keptBack" }
  | { readonly kind: "failed"; readonly problem: Problem };

/** After this pause in the work the draft goes to the server. */
const pauseMilliseconds = 700;
/** While the server cannot be reached it is tried again so often. */
const retryMilliseconds = 5000;

export interface Saving {
  readonly state: SaveState;
  readonly savedAt: string;
  readonly messages: readonly AuthoringMessage[];
  /** Saves what stands now. Answers the moment of that save, or undefined when it is not on the server. */
  readonly save: (options?: { overwrite?: boolean }) => Promise<string | undefined>;
}

interface Start {
  readonly vehicleId: string;
  readonly savedAt: string;
  readonly messages: readonly AuthoringMessage[];
}

/**
 * Keeps the draft on the server as it is worked on. One save at a time; what changed meanwhile follows. When another
 * screen saved, nothing is overwritten until the author says so. Without a connection the work is kept back here and
 * sent when the server answers again.
 */
export function useAutosave(start: Start, draft: Draft): Saving {
  const [state, setState] = useState<SaveState>({ kind: "saved" });
  const [savedAt, setSavedAt] = useState(start.savedAt);
  const [messages, setMessages] = useState(start.messages);
  const present = useRef(draft);
  const stored = useRef(draft);
  const seenAt = useRef(start.savedAt);
  // Saves go one after another: each is made over the moment the one before it answered.
  const queue = useRef<Promise<unknown>>(Promise.resolve());
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const stopped = useRef(false);

  const send = useCallback(
    async (overwrite: boolean): Promise<string | undefined> => {
      const document = present.current;
      setState({ kind: "saving" });
      try {
        const answer = await callApi(`/api/vehicles/${start.vehicleId}/draft`, {
          method: "PUT",
          body: { seenAt: overwrite ? null : seenAt.current, document },
          answer: draftSavedSchema,
        });
        seenAt.current = answer.savedAt;
        stored.current = document;
        stopped.current = false;
        setSavedAt(answer.savedAt);
        setMessages(answer.messages);
        setState({ kind: document === present.current ? "saved" : "unsaved" });
        return answer.savedAt;
      } catch (error) {
        if (!(error instanceof ApiProblem)) throw error;
        stopped.current = error.code === "conflict";
        const away = error.code === "unavailable" || error.code === "rate_limited";
        setState(away ? { kind: "keptBack" } : { kind: "failed", problem: error.problem });
        return undefined;
      }
    },
    [start.vehicleId],
  );

  const save = useCallback(
    ({ overwrite = false }: { overwrite?: boolean } = {}) => {
      clearTimeout(timer.current);
      const saved = queue.current.then(async () => {
        if (overwrite) return send(true);
        if (stopped.current) return undefined;
        // A save that ran meanwhile may have taken everything with it.
        return stored.current === present.current ? seenAt.current : send(false);
      });
      queue.current = saved.catch(() => undefined);
      return saved;
    },
    [send],
  );

  useEffect(() => {
    present.current = draft;
    if (draft === stored.current || stopped.current) return;
    setState((before) => (before.kind === "saving" ? before : { kind: "unsaved" }));
    timer.current = setTimeout(() => void save(), pauseMilliseconds);
    return () => clearTimeout(timer.current);
  }, [draft, save]);

  // What was changed while a save ran, and what could not be sent, goes out without another change.
  useEffect(() => {
    if (state.kind !== "unsaved" && state.kind !== "keptBack") return;
    const wait = state.kind === "unsaved" ? pauseMilliseconds : retryMilliseconds;
    const again = setTimeout(() => void save(), wait);
    const online = () => void save();
    window.addEventListener("online", online);
    return () => {
      clearTimeout(again);
      window.removeEventListener("online", online);
    };
  }, [state, save]);

  // Leaving with something unsaved asks first.
  useEffect(() => {
    if (state.kind === "saved") return;
    const beforeLeaving = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", beforeLeaving);
    return () => window.removeEventListener("beforeunload", beforeLeaving);
  }, [state.kind]);

  return { state, savedAt, messages, save };
}
