import { saveStart } from "../kernel/newton-system";
import { type CircuitError, type Result, succeed } from "../result";
import type { Solver } from "../solver";
import type { ChargeTracker } from "./charge-tracker";
import { createDrives, type DriveSet } from "./drives";
import { createGuardWatch, type GuardWatch } from "./guards";
import { startCharge } from "./initial-charge";
import { createIntegrator, type FirstOrders, type Integrator, method } from "./integrator";
import type { TransientEvent, TransientOptions, TransientState } from "./options";
import { createRecorder, inside, type Recorder, type Rows, start, stepEnd } from "./recorder";
import { restless, tooManySteps, tooShort } from "./transient-errors";

/** What a run leaves. */
export interface Run {
  readonly rows: Rows;
  readonly events: readonly TransientEvent[];
  readonly steps: number;
  readonly rejected: number;
  readonly iterations: number;
  readonly end: TransientState;
}

interface Limits {
  readonly until: number;
  readonly most: number;
  readonly least: number;
  readonly maxSteps: number;
  readonly eventSeconds: number;
  readonly stateRounds: number;
}

/** What goes wrong in a run says when. */
const failAt = (error: CircuitError, seconds: number) =>
  ({ ok: false, error: { seconds, ...error } }) as const;

/** Options are checked. */
export function run(
  solver: Solver,
  options: TransientOptions,
  orders: FirstOrders,
  tracker?: ChargeTracker,
): Result<Run> {
  const from = options.fromSeconds ?? options.continueFrom?.seconds ?? 0;
  const made = createDrives(solver, options.drives ?? []);
  if (!made.ok) return made;
  const drives = made.value;
  const recording = createRecorder(solver, options.record);
  if (!recording.ok) return recording;
  const integrator = createIntegrator(
    solver,
    drives,
    {
      relative: options.relativeTolerance ?? 1e-4,
      volts: options.voltTolerance ?? 1e-6,
      amps: options.ampTolerance ?? 1e-6,
      internal: options.internalTolerance ?? 1e4,
    },
    options.maxIterations ?? 20,
    orders,
    tracker,
  );
  const span = options.untilSeconds - from;
  const limits: Limits = {
    until: options.untilSeconds,
    most: options.maxStepSeconds ?? longestStep(solver, drives, span),
    least: options.minStepSeconds ?? 1e-13,
    maxSteps: options.maxSteps ?? 1_000_000,
    eventSeconds: options.eventSeconds ?? 1e-9 * span,
    stateRounds: options.stateRounds ?? 50,
  };
  integrator.seconds = from;
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
  system.tables.slots === 0 && drives.isLevel ? span : Math.min(span / 50, drives.stepSeconds);

/** Times nearer to each other than this cannot be told apart. */
const gapAt = (seconds: number): number => 8 * Number.EPSILON * Math.abs(seconds);

function cornerOf(drives: DriveSet, seconds: number, until: number): number {
  const corner = drives.cornerAfter(seconds, gapAt(seconds));
  return corner < until - gapAt(until) ? corner : until;
}

function createMarcher(
  solver: Solver,
  drives: DriveSet,
  integrator: Integrator,
  recorder: Recorder,
  limits: Limits,
) {
  const { numbering, expanded } = solver.directory;
  const events: TransientEvent[] = [];
  let watch: GuardWatch | undefined;
  let steps = 0;
  let rejected = 0;
  /** First step after a jump that has proved right. */
  let restartSeconds = 0;

  const visit = (stage: number): void => {
    const isLast = stage === method.stages - 1;
    recorder.note(solver.system.x.seconds, isLast ? stepEnd : inside);
  };
  const attempt = (stepSeconds: number, endSeconds: number): number | CircuitError => {
    if (steps++ >= limits.maxSteps) {
      return tooManySteps(limits.maxSteps, integrator.worstRow(), numbering, integrator.seconds);
    }
    recorder.drop();
    return integrator.attempt(stepSeconds, endSeconds, visit);
  };
  /** Starts afresh after a jump, with all changes of state that follow at once. */
  const restart = (stepSeconds: number): CircuitError | undefined => {
    for (let round = 0; ; round++) {
      const error = integrator.restart(stepSeconds);
      if (error) return error;
      watch ??= createGuardWatch(solver);
      if (!watch.read()) break;
      const moved = watch.enterDue();
      note(moved);
      if (round >= limits.stateRounds) return restless(expanded[moved[0]].element.id, integrator.seconds);
    }
    watch.settle();
    recorder.drop();
    recorder.note(integrator.seconds, start);
    recorder.keep();
    return undefined;
  };
  const note = (moved: readonly number[]): void => {
    for (const at of moved) {
      const { id } = expanded[at].element;
      events.push({ seconds: integrator.seconds, element: id, state: solver.states[at] });
    }
  };
  const accept = (): void => {
    integrator.accept();
    recorder.keep();
    watch?.settle();
  };

  /** Shortens a step at whose end a guard is due to end just after the first crossing. */
  const locate = (stepSeconds: number): { readonly seconds: number } | CircuitError | undefined => {
    if (!watch) return undefined;
    const { now, before } = watch;
    const lowValues = before.slice();
    const highValues = now.slice();
    const t = integrator.seconds;
    const tolerance = Math.max(limits.eventSeconds, gapAt(t));
    let low = 0;
    let high = stepSeconds;
    let tried = high;
    for (let round = 0; high - low > tolerance; round++) {
      const estimate = crossing(low, lowValues, high, highValues) + tolerance / 2;
      if (round % 3 < 2 && estimate >= high - tolerance) break;
      const middle = round % 3 === 2 ? (low + high) / 2 : Math.max(estimate, low + tolerance / 2);
      tried = middle;
      const error = attempt(middle, t + middle);
      if (typeof error !== "number") return error;
      // Too hard to solve where it was easy just beyond: a shorter step is the way.
      if (error === Number.POSITIVE_INFINITY) return undefined;
      if (watch.read()) {
        high = middle;
        highValues.set(now);
      } else {
        low = middle;
        lowValues.set(now);
      }
    }
    if (tried !== high) {
      const error = attempt(high, t + high);
      if (typeof error !== "number") return error;
      if (error === Number.POSITIVE_INFINITY) return undefined;
    }
    return { seconds: high };
  };

  const march = (firstCorner: number, stepSeconds: number): CircuitError | undefined => {
    let corner = firstCorner;
    let h = stepSeconds;
    restartSeconds = stepSeconds;
    let restartedWith = h;
    let isFresh = true;
    let error = restart(h);
    if (error) return error;
    while (integrator.seconds < limits.until) {
      const t = integrator.seconds;
      const left = corner - t;
      h = Math.min(h, limits.most);
      const isLanding = left <= h * (1 + 1e-9);
      const step = isLanding ? left : left < 2 * h ? left / 2 : h;
      const part = attempt(step, isLanding ? corner : t + step);
      if (typeof part !== "number") return part;
      if (!(part <= 1)) {
        rejected++;
        h =
          step *
          (part === Number.POSITIVE_INFINITY
            ? 0.125
            : Math.max(isFresh ? 0.01 : 0.1, integrator.factorFor(part)));
        if (h < limits.least || h < gapAt(t))
          return tooShort(integrator.worstRow(), numbering, t, limits.least);
        if (isFresh && h < 0.05 * restartedWith) {
          // The jump was resolved too coarsely for what follows it.
          integrator.undoJump();
          recorder.dropStart();
          restartedWith = h;
          error = restart(h);
          if (error) return error;
        }
        continue;
      }
      if (watch?.read()) {
        const found = locate(step);
        if (found === undefined) {
          h = step / 8;
          if (h < limits.least) return tooShort(integrator.worstRow(), numbering, t, limits.least);
          continue;
        }
        if ("code" in found) return found;
        watch.read();
        accept();
        note(watch.enterDue());
        if (isFresh) restartSeconds = Math.min(restartSeconds, found.seconds);
        h = restartSeconds;
        restartedWith = h;
        isFresh = true;
        error = restart(h);
        if (error) return error;
        continue;
      }
      accept();
      const factor = Math.min(5, integrator.factorFor(part));
      if (isFresh) restartSeconds = isLanding ? Math.max(h, step * Math.min(1, factor)) : step * factor;
      isFresh = false;
      // A new length costs a factorisation: it has to be worth it.
      if (factor < 1) h = step * factor;
      else if (factor > 1.4) h = Math.max(h, step * factor);
      if (isLanding && corner < limits.until) {
        const next = cornerOf(drives, corner, limits.until);
        const entered = drives.enter((corner + next) / 2);
        if (!entered.ok) return entered.error;
        corner = next;
        h = Math.min(restartSeconds, limits.most);
        restartedWith = h;
        isFresh = true;
        error = restart(h);
        if (error) return error;
      }
    }
    return undefined;
  };
  return {
    march,
    events,
    steps: () => steps,
    rejected: () => rejected,
    restartSeconds: () => restartSeconds,
  };
}

/** When the first guard that is due at `high` crosses zero, as straight lines have it. */
function crossing(low: number, lowValues: Float64Array, high: number, highValues: Float64Array): number {
  let first = high;
  for (let k = 0; k < highValues.length; k++) {
    const [at, to] = [lowValues[k], highValues[k]];
    if (!(to > 0)) continue;
    const when = low + (high - low) * (at >= 0 ? 0 : -at / (to - at));
    if (when < first) first = when;
  }
  return first;
}
