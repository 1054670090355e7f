import { fail, type Result, succeed } from "../result";
import type { TransientOptions } from "./options";

const positiveOptions = [
  "relativeTolerance",
  "voltTolerance",
  "ampTolerance",
  "internalTolerance",
  "maxStepSeconds",
  "minStepSeconds",
  "maxSteps",
  "maxIterations",
  "eventSeconds",
  "stateRounds",
] as const;

/** Refuses numbers that make no sense. */
export function checkOptions(options: TransientOptions): Result<void> {
  const from = options.fromSeconds ?? options.continueFrom?.seconds ?? 0;
  if (!(Number.isFinite(from) && Number.isFinite(options.untilSeconds) && options.untilSeconds > from))
    return fail("invalid_option", `untilSeconds must be a finite time after ${from}.`, {
      field: "untilSeconds",
    });
  for (const field of positiveOptions) {
    const value = options[field];
    if (value !== undefined && !(Number.isFinite(value) && value > 0))
      return fail("invalid_option", `${field} must be a finite number above 0.`, { field });
  }
  if (options.at && !options.at.every((t) => t >= from && t <= options.untilSeconds))
    return fail("invalid_option", "Every time in `at` must lie within the run.", { field: "at" });
  return succeed(undefined);
}
