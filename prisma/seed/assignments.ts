import type { AssignmentTerms } from "@probeworthy/database";

export type DemoAssignment = Omit<AssignmentTerms, "scenarioVersionId" | "weights" | "passMark"> & {
  /** Id of a starter scenario. */
  scenario: string;
};

const days = (count: number): number => count * 24 * 60 * 60 * 1000;

/** Titles are what a job card says: the customer's words, never the fault. */
export function demoAssignments(now: Date): DemoAssignment[] {
  const always = { opensAt: null, closesAt: null };
  return [
    {
      scenario: "heavy-all-at-once",
      title: "Job 1: the steering went heavy",
      mode: "practice",
      ...always,
      attemptLimit: null,
      reveal: "after_submission",
    },
    {
      scenario: "no-help-after-column-work",
      title: "Job 2: steering lamp stays on",
      mode: "practice",
      ...always,
      attemptLimit: null,
      reveal: "after_submission",
    },
    {
      scenario: "tired-after-parking-practice",
      title: "Job 3: heavy after long parking manoeuvres",
      mode: "practice",
      ...always,
      attemptLimit: null,
      reveal: "after_submission",
    },
    {
      scenario: "slow-start-heavy-start",
      title: "Test: starts slowly, then the steering is heavy",
      mode: "test",
      opensAt: now,
      closesAt: new Date(now.getTime() + days(90)),
      attemptLimit: 1,
      reveal: "after_close",
    },
  ];
}
