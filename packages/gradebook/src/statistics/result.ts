/**
 * What a statistic answers. A class is often too small for a number to mean anything, so "too few" is an ordinary
 * answer that says how many there are and how many it takes; each function's docstring says why it takes that many.
 */
export type Statistic<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: StatisticError };

export type StatisticError =
  /** `have` usable attempts where `need` are needed. */
  | { readonly code: "too_few_attempts"; readonly have: number; readonly need: number }
  /** `have` items where `need` are needed. */
  | { readonly code: "too_few_items"; readonly have: number; readonly need: number }
  /** Everyone did the same, so there is nothing to compare; `item` counts from 0 and is left out for the total. */
  | { readonly code: "no_spread"; readonly item?: number }
  /** The likelihood grows without end: these answers have no finite estimate. */
  | { readonly code: "no_finite_estimate" }
  /** The estimate had not settled after `iterations` rounds. */
  | { readonly code: "no_convergence"; readonly iterations: number }
  /** An argument is outside what it may be; `path` names it, `detail` says what would be right. */
  | { readonly code: "invalid_input"; readonly path: string; readonly detail: string };

export function known<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

export function unknown(error: StatisticError): { readonly ok: false; readonly error: StatisticError } {
  return { ok: false, error };
}

export function tooFewAttempts(have: number, need: number) {
  return unknown({ code: "too_few_attempts", have, need });
}

export function invalidInput(path: string, detail: string) {
  return unknown({ code: "invalid_input", path, detail });
}

/** Two ends of a 95 % interval, lower first. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** The two-sided 95 % point of the standard normal distribution. */
export const z95 = 1.959963984540054;
