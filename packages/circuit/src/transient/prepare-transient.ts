import type { Network } from "../network";
import { prepareSolver } from "../prepare-circuit";
import { fail, type Result, succeed } from "../result";
import type { TransientOptions } from "./options";
import { run } from "./run";
import type { Transient, TransientCircuit } from "./transient-circuit";
import { readRows } from "./waveforms";

/** Checks a network and does all work that depends on its topology only. Errors: those of prepareCircuit. */
export function prepareTransient(network: Network): Result<TransientCircuit> {
  const prepared = prepareSolver(network, true);
  if (!prepared.ok) return prepared;
  const solver = prepared.value;
  return succeed({
    nodes: solver.directory.numbering.names,
    set: solver.set,
    run: (options) => {
      const checked = checkOptions(options);
      if (!checked.ok) return checked;
      const done = run(solver, options);
      if (!done.ok) return done;
      const { rows, events, end, steps, rejected, iterations } = done.value;
      const all = readRows(rows);
      const waveforms = options.at ? all.samplesAt(options.at) : all;
      return succeed({ ...waveforms, events, end, steps, rejectedSteps: rejected, iterations });
    },
  });
}

/** Prepares a network and follows it once. */
export function transient(network: Network, options: TransientOptions): Result<Transient> {
  const circuit = prepareTransient(network);
  return circuit.ok ? circuit.value.run(options) : circuit;
}

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

function checkOptions(options: TransientOptions): Result<void> {
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
