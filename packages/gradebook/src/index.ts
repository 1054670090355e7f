export { type AttemptPolicy, type AttemptScore, attemptPolicies, countedPercent } from "./attempt-policy";
export { type CsvOptions, gradebookCsv } from "./gradebook-csv";
export {
  type GradebookAssignment,
  type GradebookAttempt,
  type GradebookCell,
  type GradebookLearner,
  type GradebookMatrix,
  type GradebookRow,
  gradebookMatrix,
} from "./matrix";
export { toShown } from "./rounding";
