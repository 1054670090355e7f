import { clearedStatus, markFailed, markNewCycle, markPassed, statusBit } from "../diagnosis/status-byte";
import type { ModuleRun } from "../settle/module-run";
import { roundStored } from "./round";
import type { ModuleMemory } from "./types";

/** What one monitor says at this instant; `idle` while its enable condition does not hold. */
type Verdict = "idle" | "fails" | "passes";

/** A failing time within this of its limit has reached it: guards against a last bit lost in a sum. */
const timeSlack = 1e-9;

/** A module's monitors run while it is awake and the key is not off. */
const isActive = (run: ModuleRun, keyOff: boolean): boolean => run.awake && !keyOff;

function judge(run: ModuleRun, position: number): Verdict {
  const monitor = run.module.monitors[position];
  if (!monitor || (monitor.enable && monitor.enable(run.readings) <= 0.5)) return "idle";
  return monitor.fails(run.readings) > 0.5 ? "fails" : "passes";
}

/** Seconds until the next monitor of this module matures if nothing changes; `Infinity` when none is on its way. */
export function secondsToMaturity(run: ModuleRun, keyOff: boolean): number {
  if (!isActive(run, keyOff)) return Number.POSITIVE_INFINITY;
  return (run.module.component.monitors ?? []).reduce((soonest, monitor, position) => {
    const failed = ((run.memory?.status[monitor.code] ?? 0) & statusBit.testFailed) !== 0;
    if (failed || judge(run, position) !== "fails") return soonest;
    const left = monitor.matureSeconds - (run.memory?.failingFor[monitor.code] ?? 0);
    return left > timeSlack ? Math.min(soonest, left) : soonest;
  }, Number.POSITIVE_INFINITY);
}

/** Seconds until this module falls asleep if nothing changes; `Infinity` while something keeps it awake. */
export function secondsToSleep(run: ModuleRun): number {
  const { sleep } = run.module;
  if (!sleep || !run.awake || run.staysAwake) return Number.POSITIVE_INFINITY;
  return Math.max(timeSlack, sleep.afterSeconds - (run.memory?.idleSeconds ?? 0));
}

/** What sleep leaves in the memory after so many seconds more. */
function advanceSleep(run: ModuleRun, seconds: number): Pick<ModuleMemory, "asleep" | "idleSeconds"> {
  if (run.asleep) return { asleep: true };
  const left = secondsToSleep(run);
  if (left === Number.POSITIVE_INFINITY) return {};
  if (left <= seconds + timeSlack) return { asleep: true };
  return { idleSeconds: roundStored((run.memory?.idleSeconds ?? 0) + seconds) };
}

/**
 * A module's memory after `seconds` in which its readings stood still. A monitor matures when it has failed without a
 * break for its time; a pass clears testFailed unless the code is held for the key cycle. While the module has no supply
 * or the key is off a new operation cycle stands ready, held codes are released, and the memory is kept.
 */
export function advanceModule(run: ModuleRun, keyOff: boolean, seconds: number): ModuleMemory {
  const monitors = run.module.component.monitors ?? [];
  const before = run.memory;
  const status: Record<string, number> = {};
  const failingFor: Record<string, number> = {};
  const active = isActive(run, keyOff);
  const held = active ? [...run.held] : [];
  monitors.forEach((monitor, position) => {
    const { code } = monitor;
    const old = before?.status[code] ?? clearedStatus;
    if (!active) {
      status[code] = markNewCycle(old);
      return;
    }
    const verdict = judge(run, position);
    status[code] = old;
    if (verdict === "fails") {
      const time = (before?.failingFor[code] ?? 0) + seconds;
      failingFor[code] = roundStored(time);
      if (time + timeSlack < monitor.matureSeconds) return;
      status[code] = markFailed(old, monitor.warningLamp);
      if (monitor.hold === "keyCycle" && !held.includes(code)) held.push(code);
    } else if (verdict === "passes" && !held.includes(code)) status[code] = markPassed(old);
  });
  return {
    powered: run.powered,
    estimates: advanceEstimates(run, seconds),
    failingFor,
    status,
    held: held.sort(),
    ...advanceSleep(run, seconds),
  };
}

/**
 * Computed temperatures, first order and exact for a constant loss: T → T∞ + (T − T∞)·e^(−t/τ), T∞ = ambient + P·Rth.
 * Without supply, and asleep, the loss is 0; the module accounts for the time it slept when it wakes.
 */
function advanceEstimates(run: ModuleRun, seconds: number): Record<string, number> {
  const result: Record<string, number> = {};
  (run.module.component.thermalEstimates ?? []).forEach((estimate, position) => {
    const steady = steadyEstimate(run, position);
    const now = run.estimate(estimate.name);
    result[estimate.name] = roundStored(steady + (now - steady) * Math.exp(-seconds / estimate.seconds));
  });
  return result;
}

function steadyEstimate(run: ModuleRun, position: number): number {
  const estimate = run.module.component.thermalEstimates?.[position];
  const law = run.module.estimates[position];
  if (!estimate || !law) return 0;
  const watts = run.awake ? Math.max(0, law.watts(run.readings)) : 0;
  return law.ambient(run.readings) + watts * estimate.thermalOhms;
}

/** Fastest change of a computed temperature of a waking module, K/s: the law may follow it, so steps must be small. */
export function fastestEstimate(run: ModuleRun): number {
  if (!run.awake) return 0;
  return (run.module.component.thermalEstimates ?? []).reduce((fastest, estimate, position) => {
    const rate = Math.abs(steadyEstimate(run, position) - run.estimate(estimate.name)) / estimate.seconds;
    return Math.max(fastest, rate);
  }, 0);
}
