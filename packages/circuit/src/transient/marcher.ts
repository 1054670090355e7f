import type { CircuitError } from "../result";
import type { Solver } from "../solver";
import type { DriveSet } from "./drives";
import { createGuardWatch, type GuardWatch } from "./guards";
import { type Integrator, method } from "./integrator";
import { type CrossingSearch, createCrossingSearch } from "./locate-crossing";
import type { TransientEvent } from "./options";
import { inside, type Recorder, start, stepEnd } from "./recorder";
import { restless, tooManySteps, tooShort } from "./transient-errors";

/** Limits of a run, s and counts. */
export interface Limits {
  readonly until: number;
  readonly most: number;
  readonly least: number;
  readonly maxSteps: number;
  readonly eventSeconds: number;
  readonly stateRounds: number;
}

/** Times nearer to each other than this cannot be told apart. */
const gapAt = (seconds: number): number => 8 * Number.EPSILON * Math.abs(seconds);

/** The next corner of a wave, or the end. */
export function cornerOf(drives: DriveSet, seconds: number, until: number): number {
  const corner = drives.cornerAfter(seconds, gapAt(seconds));
  return corner < until - gapAt(until) ? corner : until;
}

/** Goes from corner to corner of the drives by steps that the error chooses, and changes states where guards are due. */
export function createMarcher(
  solver: Solver,
  drives: DriveSet,
  integrator: Integrator,
  recorder: Recorder,
  limits: Limits,
) {
  const { numbering, expanded } = solver.directory;
  const events: TransientEvent[] = [];
  let watch: GuardWatch | undefined;
  let search: CrossingSearch | undefined;
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
      search ??= createCrossingSearch(watch.before, watch.now);
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
  const locate = (stepSeconds: number): number | CircuitError | undefined => {
    const t = integrator.seconds;
    const tolerance = Math.max(limits.eventSeconds, gapAt(t));
    let error: CircuitError | undefined;
    const found = search?.locate(stepSeconds, tolerance, (seconds) => {
      const part = attempt(seconds, t + seconds);
      if (typeof part !== "number") error = part;
      // Too hard to solve where it was easy just beyond: a shorter step is the way.
      return error || part === Number.POSITIVE_INFINITY ? undefined : watch?.read();
    });
    return error ?? found;
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
        if (typeof found !== "number") return found;
        accept();
        note(watch.enterDue());
        if (isFresh) restartSeconds = Math.min(restartSeconds, found);
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
