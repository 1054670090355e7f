"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { z } from "zod";
import { Button } from "@/components/button";
import { ProblemNotice } from "@/components/problem-notice";
import { ApiProblem, postJson } from "@/features/http/api-client";
import type { Problem } from "@/features/http/problem";

const startedSchema = z.strictObject({ attemptId: z.string() });

export interface StartButtonProps {
  readonly assignmentId: string;
  readonly title: string;
  readonly label: string;
}

/** Takes the job over and goes to the bay. A second click while the first is under way does nothing. */
export function StartButton({ assignmentId, title, label }: StartButtonProps) {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem>();
  const start = async () => {
    setBusy(true);
    setProblem(undefined);
    try {
      const { attemptId } = await postJson("/api/attempts", { assignmentId }, startedSchema);
      router.push(`/jobs/${attemptId}`);
    } catch (error) {
      setBusy(false);
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem);
    }
  };
  return (
    <div className="space-y-2">
      <Button kind="primary" busy={busy} onClick={() => void start()} aria-label={`${label}: ${title}`}>
        {label}
      </Button>
      {problem !== undefined && <ProblemNotice problem={problem} />}
    </div>
  );
}
