/** Follows along with an integration, stage by stage, with the system standing at the solution of the stage. */
export interface ChargeTracker {
  /** After the first (0) and the second (1) short step of a jump. */
  jumped(which: 0 | 1, rate: number): void;
  solvedStage(stage: number, stepSeconds: number, rate: number): void;
  /** The last jump is to be resolved anew. */
  undoJump(): void;
  /** The last attempt counts. */
  accepted(): void;
}
