/**
 * Functions that hold secrets (variant, seed, world, rubric). Only a server or a script may import this entry.
 *
 * makeVariant(scenario, vehicleDocument, seed) → Result<Variant, VariantError>
 * openAttempt(context) → Result<{ state, events }, Refusal>          context = { scenario, document, variant }
 * decide(context, state, command) → Result<AttemptEvent[], Refusal>
 * evolve(state, event) → AttemptState · replay(events) → AttemptState
 * learnerView(context, state, events) → LearnerView (parsed by the strict schema)
 * grade(context, events) → Result<GradeResult, GradeError>
 * gradeSteps(context, events) → the same in small pieces, with progress, for a server that must not stand still
 * diagnosisOf(context, report) → whether the cause is right, and true and named kinds, for statistics
 * previewVariants(scenario, vehicleDocument, seeds) → symptoms and faults per seed, for the author of a scenario
 * checkScenario(scenario, vehicleDocument) → messages with paths
 * referencePath(context, plan?) → the tests the reference strategy makes on the variant's car, in small pieces
 * difficultiesOf(scenario, vehicleDocument) → its length for every candidate and severity stage, in small pieces
 * makeVariantInBand(scenario, vehicleDocument, seed, difficulties, band) → Result<Variant, …>
 */
export { type AttemptState, evolve, replay } from "./attempt-state";
export { checkScenario, type ScenarioMessage } from "./check-scenario";
export type { AttemptContext } from "./context";
export { decide } from "./decide/decide";
export { checkLog, type GradeError } from "./grade/check-log";
export { type Diagnosis, diagnosisOf } from "./grade/diagnosis";
export { type GradeOptions, grade, gradeSteps } from "./grade/grade-attempt";
export { type RubricTerms, reweigh } from "./grade/reweigh";
export { learnerView } from "./learner-view";
export { openAttempt } from "./open-attempt";
export { type Preview, previewVariants } from "./preview-variants";
export {
  bandOf,
  bandRatio,
  bandsOf,
  type Difficulty,
  difficultiesOf,
  makeVariantInBand,
} from "./strategy/difficulty";
export { nextTest } from "./strategy/next-test";
export { createPlan } from "./strategy/plan";
export { expectedMinutes, type ReferencePath, referencePath } from "./strategy/reference-path";
export { makeVariant, type Variant, type VariantError, variantSchema } from "./variant";
export { engineVersion } from "./version";
