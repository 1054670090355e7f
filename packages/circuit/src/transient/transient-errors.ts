import { worstRow } from "../kernel/newton";
import type { NewtonSystem } from "../kernel/newton-system";
import { describeRow, nameRow, singularAt } from "../name-row";
import type { Numbering } from "../numbering";
import type { CircuitError } from "../result";
import type { StageOutcome } from "./stage-newton";

/** Why the equations of a moment have no answer. */
export function stuckAt(
  outcome: StageOutcome,
  system: NewtonSystem,
  numbering: Numbering,
  seconds: number,
): CircuitError {
  if (outcome === "singular") {
    const { message, ...error } = singularAt(system.singularRow, numbering);
    return { ...error, message: `At ${seconds} s: ${message}`, seconds };
  }
  const where = nameRow(worstRow(system), numbering);
  const message = `At ${seconds} s Newton's method does not settle; the worst is ${describeRow(where)}.`;
  return { code: "no_convergence", message, ...where, seconds };
}

/** The step would have to be shorter than allowed. */
export function tooShort(
  row: number,
  numbering: Numbering,
  seconds: number,
  stepSeconds: number,
): CircuitError {
  const where = nameRow(row, numbering);
  const message = `At ${seconds} s the error at ${describeRow(where)} asks for a step below ${stepSeconds} s.`;
  return { code: "step_too_short", message, ...where, seconds };
}

export function tooManySteps(
  steps: number,
  row: number,
  numbering: Numbering,
  seconds: number,
): CircuitError {
  const where = nameRow(row, numbering);
  const message = `${steps} steps were not enough: at ${seconds} s; the error was largest at ${describeRow(where)}.`;
  return { code: "step_limit", message, ...where, seconds };
}

export function restless(element: string, seconds: number): CircuitError {
  const message = `At ${seconds} s "${element}" keeps changing its state; there is no rest.`;
  return { code: "no_convergence", message, element, seconds };
}
