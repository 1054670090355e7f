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
export { type Ability, expectedAbility } from "./statistics/ability";
export { type Answer, type AnswerTable, completeRows, type ScoreTable } from "./statistics/answers";
export {
  attemptsForRasch,
  type ConditionalRasch,
  conditionalRasch,
  type RaschItem,
} from "./statistics/conditional-rasch";
export {
  type ConfusionMatrix,
  type ConfusionRow,
  confusionMatrix,
  type DiagnosedAttempt,
  nothingWrong,
} from "./statistics/confusion-matrix";
export {
  attemptsForDifficulty,
  attemptsForDiscrimination,
  type Correlation,
  type Discrimination,
  itemDifficulty,
  itemDiscriminations,
} from "./statistics/item-analysis";
export { type JointTable, jointTable } from "./statistics/joint-table";
export { type Agreement, cohenKappa } from "./statistics/kappa";
export {
  attemptsForOneSlope,
  attemptsForOwnSlopes,
  type FittedItem,
  type ItemParameters,
  type MarginalFit,
  oneParameterFit,
  twoParameterFit,
} from "./statistics/marginal-fit";
export {
  type SkillAnswer,
  type TracingParameters,
  type TracingStep,
  traceMastery,
  traceSkills,
} from "./statistics/mastery-tracing";
export { type Divisor, divisors } from "./statistics/moments";
export { type Proportion, proportion } from "./statistics/proportion";
export { attemptsForReliability, type Reliability, reliability } from "./statistics/reliability";
export type { Interval, Statistic, StatisticError } from "./statistics/result";
export { type ConfusionTable, confusionCsv, type ItemStatistics, itemStatisticsCsv } from "./statistics-csv";
