"use client";

import { Button } from "@/components/button";
import { ProblemNotice } from "@/components/problem-notice";
import type { Problem } from "@/features/http/problem";
import { LocalTime } from "@/features/time/local-time";
import { MessageList } from "./message-list";
import type { Draft } from "./use-draft";

export interface SavePanelProps {
  readonly draft: Draft;
  readonly publishedNumber: number | null;
  readonly publishing: boolean;
  readonly problem: Problem | undefined;
  readonly onPublish: () => void;
}

/** Where the draft stands, what is missing, and the way out. Stays in view on a wide screen. */
export function SavePanel({ draft, publishedNumber, publishing, problem, onPublish }: SavePanelProps) {
  const { state, savedAt, messages, save } = draft;
  return (
    <aside aria-label="Draft" className="space-y-4 border-2 border-ink p-4 xl:sticky xl:top-4">
      <p role="status">
        {state.kind === "saved" && (
          <>
            Draft saved, <LocalTime at={savedAt} />.
          </>
        )}
        {state.kind === "unsaved" && "Changed; it is saved in a moment."}
        {state.kind === "saving" && "Saving…"}
        {state.kind === "failed" && "Not saved. Your work is still on this screen."}
      </p>
      {state.kind === "failed" && (
        <ProblemNotice
          problem={state.problem}
          action={
            state.problem.code === "conflict" ? (
              <span className="flex flex-wrap gap-3">
                <Button onClick={() => void save({ overwrite: true })}>Keep mine</Button>
                <Button onClick={() => window.location.reload()}>Load the other</Button>
              </span>
            ) : (
              <Button onClick={() => void save()}>Save again</Button>
            )
          }
        />
      )}
      <MessageList messages={messages} />
      {problem !== undefined && <ProblemNotice problem={problem} />}
      <div className="flex flex-wrap gap-3">
        <Button onClick={() => void save()} busy={state.kind === "saving"}>
          Save draft
        </Button>
        <Button kind="primary" onClick={onPublish} busy={publishing}>
          Publish version {(publishedNumber ?? 0) + 1}
        </Button>
      </div>
      <p className="text-sm text-ink-soft">
        A published version never changes. Work already handed out keeps the version it was handed out with.
      </p>
    </aside>
  );
}
