"use client";

import { Button } from "@/components/button";
import { ProblemNotice } from "@/components/problem-notice";
import { LocalTime } from "@/features/time/local-time";
import type { Saving } from "./use-autosave";

/** Where the draft stands, in words; a conflict with another screen is settled here. */
export function SaveStatus({ saving }: { readonly saving: Saving }) {
  const { state, savedAt, save } = saving;
  return (
    <div className="min-w-0">
      <p role="status" className="text-sm">
        {state.kind === "saved" && (
          <>
            Saved, <LocalTime at={savedAt} />.
          </>
        )}
        {state.kind === "unsaved" && "Changed; saved in a moment."}
        {state.kind === "saving" && "Saving…"}
        {state.kind === "keptBack" && "Kept back here: the server does not answer. It is sent when it does."}
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
    </div>
  );
}
