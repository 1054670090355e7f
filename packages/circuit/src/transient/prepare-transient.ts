import type { Network } from "../network";
import { prepareSolver } from "../prepare-circuit";
import { type Result, succeed } from "../result";
import { checkOptions } from "./check-options";
import { createIntegrator } from "./integrator";
import type { TransientOptions } from "./options";
import { run } from "./run";
import type { Transient, TransientCircuit } from "./transient-circuit";
import { readRows } from "./waveforms";

/** Checks a network and does all work that depends on its topology only. Errors: those of prepareCircuit. */
export function prepareTransient(network: Network): Result<TransientCircuit> {
  const prepared = prepareSolver(network, true);
  if (!prepared.ok) return prepared;
  const solver = prepared.value;
  const integrator = createIntegrator(solver);
  return succeed({
    nodes: solver.directory.numbering.names,
    set: solver.set,
    run: (options) => {
      const checked = checkOptions(options);
      if (!checked.ok) return checked;
      const done = run(solver, integrator, options);
      if (!done.ok) return done;
      const { rows, events, end, steps, rejected, iterations } = done.value;
      const all = readRows(rows);
      const waveforms = options.at ? { ...all, ...all.samplesAt(options.at) } : all;
      return succeed({ ...waveforms, events, end, steps, rejectedSteps: rejected, iterations });
    },
  });
}

/** Prepares a network and follows it once. */
export function transient(network: Network, options: TransientOptions): Result<Transient> {
  const circuit = prepareTransient(network);
  return circuit.ok ? circuit.value.run(options) : circuit;
}
