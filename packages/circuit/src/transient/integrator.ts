import { type NumericFactor, solveFactored } from "../kernel/factor";
import { stepShunt, worstRow } from "../kernel/newton";
import { invalidate, requireFactor } from "../kernel/newton-system";
import type { CircuitError } from "../result";
import type { Solver } from "../solver";
import type { ChargeTracker } from "./charge-tracker";
import type { DriveSet } from "./drives";
import { createPredictor } from "./predictor";
import { type StageNewton, type StageOutcome, solveStage } from "./stage-newton";
import { listStored, scatterRates, worstStored } from "./stored-rows";
import { esdirk3 } from "./tableau";
import { stuckAt } from "./transient-errors";

/** The method of integration. */
export const method = esdirk3;

/** Errors allowed to one step; see StepLimits. */
export interface Tolerances {
  readonly relative: number;
  readonly volts: number;
  readonly amps: number;
  /** Times the Newton tolerance of an internal unknown. */
  readonly internal: number;
}

/** Carries the solution of a network from one moment to the next. Allocates nothing while it goes. */
export interface Integrator {
  /** Time of the last accepted solution, and whatever has been stored by then. */
  seconds: number;
  readonly charge: Float64Array;
  /** Stages solved, iterations spent. */
  readonly newton: StageNewton;
  /** Forgets the run before. The charges to start from are to be written into `charge`. */
  begin(seconds: number, settings: RunSettings): void;
  /**
   * Finds currents, voltages and rates that fit the charges right after a jump; where no finite current can bring that
   * about (a capacitor at an ideal source that jumps) the charges jump too. `stepSeconds` is the step to come.
   */
  restart(stepSeconds: number): CircuitError | undefined;
  /** Puts the charges back to what they were before the last restart. */
  undoJump(): void;
  /**
   * Tries a step. Answers its error as a part of what is allowed (accept up to 1), Infinity where Newton's method did
   * not converge; `visit` is called with each stage solved, in the order of `stageNodes`.
   */
  attempt(stepSeconds: number, endSeconds: number, visit: (stage: number) => void): number | CircuitError;
  /** Makes the end of the last attempt the last accepted solution. */
  accept(): void;
  /** The largest factor by which a step that had this error may be followed by a longer one, or is to be cut. */
  factorFor(error: number): number;
  /** The row that the last error was largest at, or where Newton's method failed. */
  worstRow(): number;
}

/** What one run goes by. */
export interface RunSettings {
  readonly drives: DriveSet;
  readonly tolerances: Tolerances;
  readonly maxIterations: number;
  readonly tracker?: ChargeTracker | undefined;
}

/** A jump is resolved within this part of the step that follows it: far below its error, far above rounding. */
const jumpPart = 1e-5;

type Factors = { jump: NumericFactor | undefined; step: NumericFactor | undefined };

/**
 * One for all runs of a network: its arrays serve them all, and so do the orders of elimination found first, one for the
 * size of rate within a jump and one for that of a step; the same run then gives the same digits again.
 */
export function createIntegrator(solver: Solver): Integrator {
  const { system } = solver;
  const { numbering } = solver.directory;
  const { x, pattern, tables } = system;
  const size = pattern.size;
  const slots = tables.slots;
  const column = () => new Float64Array(slots);
  const charge = column();
  const chargeBefore = column();
  const rates = method.nodes.map(column);
  const estimate = column();
  const rows = new Float64Array(size + 1);
  const shift = new Float64Array(size + 1);
  const allowed = new Float64Array(size);
  const floor = new Float64Array(size);
  const predictor = createPredictor(system, method.nodes);
  const newton: StageNewton = { allowed, contraction: 1, iterations: 0 };
  const orders: Factors = { jump: undefined, step: undefined };
  const factors: Factors = { jump: undefined, step: undefined };
  let settings: RunSettings | undefined;
  let use: "jump" | "step" | undefined;
  let isChanged = true;
  let end = 0;
  let taken = 0;
  let worst = 0;

  let stored = listStored(system, floor, 0);
  const most = { part: 0 };

  const required = (): RunSettings => {
    if (!settings) throw new Error("A run begins with begin().");
    return settings;
  };

  const setRate = (rate: number): void => {
    // Where nothing is stored every rate is the same to the equations.
    const wanted = slots === 0 ? 1 : rate;
    if (x.rate === wanted) return;
    x.rate = wanted;
    invalidate(system);
    isChanged = true;
  };
  const choose = (kind: "jump" | "step"): void => {
    if (use === kind || (slots === 0 && use)) return;
    if (use) factors[use] = system.factor;
    system.factor = factors[kind];
    x.stale.fill(1);
    use = kind;
  };
  const allow = (): void => {
    const { high } = predictor.base;
    const { relative } = required().tolerances;
    for (let i = 0; i < size; i++) allowed[i] = relative * Math.abs(high[i]) + floor[i];
  };
  const solve = (): StageOutcome => {
    const outcome = solveStage(system, newton, required().maxIterations, isChanged);
    isChanged = outcome !== "solved";
    if (use) orders[use] ??= system.factor;
    return outcome;
  };
  const jump = (rate: number): StageOutcome => {
    for (let k = 0; k < slots; k++) x.history[k] = -rate * charge[k];
    let outcome = solve();
    if (outcome === "solved" || tables.isLinear) return outcome;
    // From nothing, with a leak that fades: the charges hold what the past has to say.
    system.factor = undefined;
    outcome = stepShunt(system, 3 * required().maxIterations, 24) === "converged" ? solve() : "stuck";
    return outcome;
  };

  const self: Integrator = {
    seconds: 0,
    charge,
    newton,
    begin(seconds, next) {
      const { tolerances } = next;
      settings = next;
      self.seconds = seconds;
      newton.iterations = 0;
      factors.jump = orders.jump;
      factors.step = orders.step;
      use = undefined;
      floor.fill(tolerances.amps).fill(tolerances.volts, 0, pattern.nodeCount);
      for (const { law, unknowns } of tables.law.devices)
        for (const [k, { tolerance }] of law.internals.entries())
          floor[unknowns[k]] = tolerances.internal * tolerance;
      stored = listStored(system, floor, tolerances.volts);
    },
    restart(stepSeconds) {
      const { drives, tracker } = required();
      // Time runs from here on, which connect() wants to know.
      const rate = 1 / (jumpPart * stepSeconds);
      choose("jump");
      setRate(rate);
      const connected = solver.connect();
      if (!connected.ok) return connected.error;
      x.seconds = self.seconds;
      const written = drives.write(self.seconds);
      if (!written.ok) return written.error;
      isChanged = true;
      newton.contraction = 1;
      predictor.restart();
      allow();
      const first = jump(rate);
      if (first !== "solved") return stuckAt(first, system, numbering, self.seconds);
      if (slots > 0) {
        chargeBefore.set(charge);
        tracker?.jumped(0, rate);
        // What one short step moved beyond a second one was an impulse; the regular part is taken back.
        for (let k = 0; k < slots; k++) {
          charge[k] = x.charge[k];
        }
        const second = jump(rate);
        if (second !== "solved") return stuckAt(second, system, numbering, self.seconds);
        tracker?.jumped(1, rate);
        const [rate0] = rates;
        for (let k = 0; k < slots; k++) {
          rate0[k] = rate * x.charge[k] + x.history[k];
          charge[k] -= rate0[k] / rate;
          if (Math.abs(charge[k] - chargeBefore[k]) <= jumpPart * Math.abs(rate0[k]) * stepSeconds)
            charge[k] = chargeBefore[k];
        }
      }
      predictor.restart();
      return undefined;
    },
    undoJump() {
      charge.set(chargeBefore);
      settings?.tracker?.undoJump();
    },
    attempt(stepSeconds, endSeconds, visit) {
      const { drives, tracker } = required();
      end = endSeconds;
      taken = stepSeconds;
      choose("step");
      const rate = 1 / (method.diagonal * stepSeconds);
      setRate(rate);
      allow();
      for (let stage = 1; stage < method.stages; stage++) {
        const isLast = stage === method.stages - 1;
        x.seconds = isLast ? endSeconds : self.seconds + method.nodes[stage] * stepSeconds;
        const written = drives.write(x.seconds);
        if (!written.ok) return written.error;
        recall(stage, stepSeconds, rate);
        predictor.predict(stage, stepSeconds);
        const outcome = solve();
        if (outcome === "singular" && tables.isLinear) return stuckAt(outcome, system, numbering, x.seconds);
        if (outcome !== "solved") {
          worst = outcome === "singular" ? system.singularRow : worstRow(system);
          // The order of elimination was chosen at other values; it may be what failed.
          system.factor = undefined;
          return Number.POSITIVE_INFINITY;
        }
        const own = rates[stage];
        for (let k = 0; k < slots; k++) own[k] = rate * x.charge[k] + x.history[k];
        predictor.keep(stage);
        tracker?.solvedStage(stage, stepSeconds, rate);
        visit(stage);
      }
      return slots === 0 ? 0 : errorOf(stepSeconds, rate);
    },
    accept() {
      self.seconds = end;
      for (let k = 0; k < slots; k++) charge[k] = x.charge[k];
      const last = rates[method.stages - 1];
      rates[method.stages - 1] = rates[0];
      rates[0] = last;
      predictor.accept(taken);
      settings?.tracker?.accepted();
    },
    worstRow: () => worst,
    factorFor: (error) => 0.9 * error ** (-1 / method.errorOrder),
  };

  /** The part of dq/dt at a stage that the earlier ones decide. */
  const recall = (stage: number, stepSeconds: number, rate: number): void => {
    const weights = method.weights[stage];
    const { history } = x;
    for (let k = 0; k < slots; k++) history[k] = charge[k];
    for (let j = 0; j < stage; j++) {
      const part = stepSeconds * weights[j];
      const earlier = rates[j];
      for (let k = 0; k < slots; k++) history[k] += part * earlier[k];
    }
    for (let k = 0; k < slots; k++) history[k] *= -rate;
  };

  /**
   * The error of the charges, led through the network: by how much it displaces the unknowns. So a charge counts by what
   * it does to voltages and currents, and what is stiff is not held against the step.
   */
  const errorOf = (stepSeconds: number, rate: number): number => {
    for (let k = 0; k < slots; k++) estimate[k] = 0;
    for (let j = 0; j < method.stages; j++) {
      const part = rate * stepSeconds * method.error[j];
      const own = rates[j];
      for (let k = 0; k < slots; k++) estimate[k] += part * own[k];
    }
    for (let i = 0; i <= size; i++) rows[i] = 0;
    scatterRates(system, estimate, rows);
    solveFactored(requireFactor(system), rows, shift);
    shift[size] = 0;
    worst = worstStored(stored, shift, predictor.base.high, x.high, required().tolerances.relative, most);
    return most.part;
  };
  return self;
}
