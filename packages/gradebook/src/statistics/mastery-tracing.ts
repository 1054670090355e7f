import { invalidInput, known, type Statistic, tooFewAttempts } from "./result";

/** The four probabilities of the model, each 0 … 1. */
export interface TracingParameters {
  /** Mastered before the first attempt. */
  readonly initial: number;
  /** Learned between one attempt and the next. */
  readonly learn: number;
  /** Wrong although mastered. */
  readonly slip: number;
  /** Right although not mastered. */
  readonly guess: number;
}

export interface TracingStep {
  /** Probability of a right answer, as it stood before the answer was seen. */
  readonly predicted: number;
  /** Probability of mastery once the answer was seen, before anything is learned from it. */
  readonly posterior: number;
  /** Probability of mastery going into the next attempt. */
  readonly mastery: number;
}

/**
 * Mastery of one skill after each attempt, in order: a two-state hidden Markov model without forgetting.
 * posterior = P(mastered | answer) by Bayes; mastery = posterior + (1 − posterior)·learn.
 * Needs one attempt: before the first there is only the assumption `initial`, which says nothing of the learner.
 * Source: A. T. Corbett and J. R. Anderson, "Knowledge tracing", 1995 (equations from memory).
 * Errors: `too_few_attempts`; `invalid_input` where a probability is outside 0 … 1, where slip + guess ≥ 1 (a right answer
 * would then speak against mastery), or where the parameters say that an answer which was given cannot happen.
 */
export function traceMastery(
  answers: readonly (0 | 1)[],
  parameters: TracingParameters,
): Statistic<readonly TracingStep[]> {
  for (const name of ["initial", "learn", "slip", "guess"] as const) {
    if (!(parameters[name] >= 0 && parameters[name] <= 1)) return invalidInput(name, "must be within 0 … 1");
  }
  const { initial, learn, slip, guess } = parameters;
  if (slip + guess >= 1) return invalidInput("slip", "slip and guess together must stay below 1");
  if (answers.length === 0) return tooFewAttempts(0, 1);
  const steps: TracingStep[] = [];
  let mastery = initial;
  for (const [index, answer] of answers.entries()) {
    const predicted = mastery * (1 - slip) + (1 - mastery) * guess;
    const seen = answer === 1 ? predicted : 1 - predicted;
    if (seen <= 0) return invalidInput(`answers.${index}`, "cannot happen with these parameters");
    const posterior = (mastery * (answer === 1 ? 1 - slip : slip)) / seen;
    mastery = posterior + (1 - posterior) * learn;
    steps.push({ predicted, posterior, mastery });
  }
  return known(steps);
}

export interface SkillAnswer {
  readonly skill: string;
  readonly answer: 0 | 1;
}

/** One learner's attempts in the order they were made, traced for each skill by itself. Errors as `traceMastery`. */
export function traceSkills(
  answers: readonly SkillAnswer[],
  parametersOf: (skill: string) => TracingParameters,
): ReadonlyMap<string, Statistic<readonly TracingStep[]>> {
  const bySkill = new Map<string, (0 | 1)[]>();
  for (const { skill, answer } of answers) bySkill.set(skill, [...(bySkill.get(skill) ?? []), answer]);
  return new Map([...bySkill].map(([skill, given]) => [skill, traceMastery(given, parametersOf(skill))]));
}
