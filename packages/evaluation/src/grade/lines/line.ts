import type { ConditionValues } from "@probeworthy/vehicle";
import type { z } from "zod";
import type { AttemptState } from "../../attempt-state";
import type { AttemptContext } from "../../context";
import type { AttemptEvent } from "../../event";
import type { gradeLineSchema, reasonSchema } from "../../grade";
import type { Evidence } from "../evidence";
import type { Proof } from "../proof";

export type Reason = z.infer<typeof reasonSchema>;
export type GradeLine = z.infer<typeof gradeLineSchema>;

/** What every rubric line may look at. */
export interface Attempted {
  readonly context: AttemptContext;
  readonly events: readonly AttemptEvent[];
  readonly final: AttemptState;
  readonly evidence: Evidence;
  readonly proof: Proof;
  /** 0 … 1: how near the named cause is to the truth. */
  readonly naming: number;
  /** Whether the points of a logged reading carried current in a healthy car in the same condition. */
  readonly loaded: (event: AttemptEvent) => boolean;
}

/** A line of the rubric before weights: its share and why. */
export interface Scored {
  readonly share: number;
  readonly reasons: readonly Reason[];
  readonly awaitsPerson: boolean;
}

export const score = (share: number, reasons: readonly Reason[], awaitsPerson = false): Scored => ({
  share: Math.round(Math.min(1, Math.max(0, share)) * 1000) / 1000,
  reasons: reasons.map((reason) => ({ ...reason, effect: Math.round(reason.effect * 1000) / 1000 })),
  awaitsPerson,
});

export const linesOf = (events: readonly AttemptEvent[]): number[] => events.map(({ sequence }) => sequence);

/** Did the learner measure, scan or look at a fuse at all? */
export const measured = (events: readonly AttemptEvent[]): boolean =>
  events.some(({ observation }) => ["reading", "codes", "liveData", "fuse"].includes(observation.kind));

export type Conditions = ConditionValues;
