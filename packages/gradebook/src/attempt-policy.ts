/** Which of several attempts counts. */
export const attemptPolicies = ["best", "latest", "first", "average"] as const;
export type AttemptPolicy = (typeof attemptPolicies)[number];

/** A graded attempt; `number` counts a learner's attempts at one assignment from 1. */
export interface AttemptScore {
  readonly number: number;
  /** 0 … 100, after any override by an instructor. */
  readonly percent: number;
}

/**
 * The percentage that counts, not rounded; null when nothing has been graded yet (which is not the same as 0).
 * The order in which the attempts are handed in does not matter.
 */
export function countedPercent(attempts: readonly AttemptScore[], policy: AttemptPolicy): number | null {
  const inOrder = [...attempts].sort((a, b) => a.number - b.number);
  const percents = inOrder.map(({ percent }) => percent);
  switch (policy) {
    case "best":
      return percents.length === 0 ? null : Math.max(...percents);
    case "latest":
      return percents.at(-1) ?? null;
    case "first":
      return percents[0] ?? null;
    case "average":
      return percents.length === 0 ? null : percents.reduce((sum, one) => sum + one, 0) / percents.length;
  }
}
