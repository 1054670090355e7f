import type { GradeResult, LearnerView } from "@probeworthy/evaluation";

export interface Standing {
  /** Ids of the causes the readings up to and including this line allow. */
  readonly standing: readonly string[];
  readonly ruledOut: readonly string[];
  /** Whether this line is an observation that was weighed at all. */
  readonly weighed: boolean;
}

/** What still stands after each line of the log, by sequence; lines that observe nothing change nothing. */
export function standingAfter(
  log: LearnerView["log"],
  evidence: GradeResult["evidence"] | undefined,
): ReadonlyMap<number, Standing> {
  const result = new Map<number, Standing>();
  if (evidence === undefined) return result;
  const byLine = new Map(evidence.steps.map((step) => [step.line, step]));
  let standing: readonly string[] = evidence.candidates.map(({ id }) => id);
  for (const { sequence } of log) {
    const step = byLine.get(sequence);
    if (step !== undefined) standing = step.standing;
    result.set(sequence, { standing, ruledOut: step?.ruledOut ?? [], weighed: step !== undefined });
  }
  return result;
}
