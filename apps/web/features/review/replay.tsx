"use client";

import type { GradeResult, LearnerView } from "@probeworthy/evaluation";
import { useState } from "react";
import { createNames } from "@/features/bay/names";
import { ReplayStep } from "./replay-step";
import { ReplayTable } from "./replay-table";
import type { ReviewView } from "./review-view";
import { standingAfter } from "./standing";

export interface ReplayProps {
  readonly log: LearnerView["log"];
  readonly work: LearnerView;
  readonly evidence: GradeResult["evidence"] | undefined;
  readonly remarks: ReviewView["secret"]["remarks"];
}

/** The log again, line by line: a slider through it, and the whole of it as a table. */
export function Replay({ log, work, evidence, remarks }: ReplayProps) {
  const [sequence, setSequence] = useState(1);
  const names = createNames(work);
  const steps = standingAfter(log, evidence);
  return (
    <section aria-labelledby="review-replay" className="space-y-6">
      <h2 id="review-replay">Replay</h2>
      <ReplayStep
        log={log}
        names={names}
        evidence={evidence}
        remarks={remarks}
        sequence={sequence}
        steps={steps}
        onMove={setSequence}
      />
      <ReplayTable
        log={log}
        names={names}
        evidence={evidence}
        remarks={remarks}
        steps={steps}
        current={sequence}
      />
    </section>
  );
}
