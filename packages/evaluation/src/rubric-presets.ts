import type { Weights } from "./scenario";

export const rubricPresetNames = ["practice", "collegeTest", "skillCheck"] as const;
export type RubricPresetName = (typeof rubricPresetNames)[number];

export interface RubricPreset {
  readonly weights: Weights;
  /** Percent of the points, 0 … 100. */
  readonly passMark: number;
}

/**
 * Weights and pass marks to start from; whoever hands a job out may set each number otherwise. Our own figures.
 * Practice rewards the way of working and leaves time out of it. A test is mostly the proof. A skill check asks what a
 * shop asks of a new hire: the right answer, proven, in good time, without harm.
 */
export const rubricPresets: Readonly<Record<RubricPresetName, RubricPreset>> = {
  practice: { weights: { cause: 40, method: 40, safety: 10, efficiency: 0, report: 10 }, passMark: 60 },
  collegeTest: { weights: { cause: 45, method: 25, safety: 10, efficiency: 5, report: 15 }, passMark: 70 },
  skillCheck: { weights: { cause: 45, method: 15, safety: 15, efficiency: 20, report: 5 }, passMark: 75 },
};
