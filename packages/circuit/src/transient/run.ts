import { saveStart } from "../kernel/newton-system";
import { type CircuitError, type Result, succeed } from "../result";
import type { Solver } from "../solver";
import type { ChargeTracker } from "./charge-tracker";
import { createDrives, type DriveSet } from "./drives";
import { startCharge } from "./initial-charge";
import type { Integrator } from "./integrator";
import { cornerOf, createMarcher, type Limits } from "./marcher";
import type { TransientEvent, TransientOptions, TransientState } from "./options";
import { createRecorder, type Rows } from "./recorder";

/** What a run leaves. */
export interface Run {
  readonly rows: Rows;
  readonly events: readonly TransientEvent[];
  readonly steps: number;
  readonly rejected: number;
  readonly iterations: number;
  readonly end: TransientState;
}

/** What goes wrong in a run says when. */
const failAt = (error: CircuitError, seconds: number) =>
  ({ ok: false, error: { seconds, ...error } }) as const;

/** Options are checked. */
export function run(
  solver: Solver,
  integrator: Integrator,
  options: TransientOptions,
  tracker?: ChargeTracker,
): Result<Run> {
  const from = options.fromSeconds ?? options.continueFrom?.seconds ?? 0;
  const made = createDrives(solver, options.drives ?? []);
  if (!made.ok) return made;
  const drives = made.value;
  const recording = createRecorder(solver, options.record);
  if (!recording.ok) return recording;
  integrator.begin(from, {
    drives,
    tolerances: {
      relative: options.relativeTolerance ?? 1e-4,
      volts: options.voltTolerance ?? 1e-6,
      amps: options.ampTolerance ?? 1e-6,
      internal: options.internalTolerance ?? 1e4,
    },
    maxIterations: options.maxIterations ?? 20,
    tracker,
  });
  const span = options.untilSeconds - from;
  const limits: Limits = {
    until: options.untilSeconds,
    most: options.maxStepSeconds ?? longestStep(solver, drives, span),
    least: options.minStepSeconds ?? 1e-13,
    maxSteps: options.maxSteps ?? 1_000_000,
    eventSeconds: options.eventSeconds ?? 1e-9 * span,
    stateRounds: options.stateRounds ?? 50,
  };
  solver.system.x.seconds = from;
  const corner = cornerOf(drives, from, limits.until);
  const entered = drives.enter((from + corner) / 2);
  if (!entered.ok) return failAt(entered.error, from);
  const written = drives.write(from);
  if (!written.ok) return failAt(written.error, from);
  const begun = startCharge(solver, options, integrator.charge);
  if (!begun.ok) return failAt(begun.error, from);
  const stepSeconds = Math.min(limits.most, options.continueFrom?.stepSeconds ?? 1e-3 * (corner - from));
  const marcher = createMarcher(solver, drives, integrator, recording.value, limits);
  const error = marcher.march(corner, stepSeconds);
  if (error) return failAt(error, integrator.seconds);
  return succeed({
    rows: recording.value.rows,
    events: marcher.events,
    steps: marcher.steps(),
    rejected: marcher.rejected(),
    iterations: integrator.newton.iterations,
    end: {
      ...saveStart(solver.system),
      seconds: integrator.seconds,
      charge: integrator.charge.slice(),
      states: solver.states.slice(),
      stepSeconds: marcher.restartSeconds(),
    },
  });
}

/** Where nothing is stored and nothing driven but by jumps, there is nothing to see between two corners. */
const longestStep = ({ system }: Solver, drives: DriveSet, span: number): number =>
  system.tables.slots === 0 && drives.isLevel ? span : Math.min(span / 20, drives.stepSeconds);
