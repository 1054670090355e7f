import { describeRow, nameRow } from "../name-row";
import type { Network } from "../network";
import { prepareSolver } from "../prepare-circuit";
import { type CircuitError, fail, type Result, succeed } from "../result";
import type { Solver } from "../solver";
import { checkOptions } from "../transient/check-options";
import { createIntegrator } from "../transient/integrator";
import type { TransientOptions } from "../transient/options";
import { type Run, run } from "../transient/run";
import { readRows } from "../transient/waveforms";
import { type FreeCharges, listFreeCharges } from "./free-charges";
import { solveDense } from "./linear-solve";
import type { Periodic, PeriodicOptions } from "./options";
import { createSensitivity, type Sensitivity } from "./sensitivity";

/** Newton steps before the search falls back to letting periods pass. */
const newtonRounds = 12;
/** Periods that pass before the first Newton step, so that diodes and relays are in their stride. */
const firstPeriods = 2;

/**
 * The steady state under drives that repeat themselves: shooting. The charges at the start of a period are sought that
 * come back at its end, by Newton's method on the period with its sensitivities, so that what takes many periods (a
 * motor's speed, a filter, a winding's heat) need not be waited for. Where that fails (states that change at moments of
 * their own), periods pass until they repeat themselves.
 */
export function findPeriodicSteadyState(network: Network, options: PeriodicOptions): Result<Periodic> {
  const { hertz, periodSeconds = hertz === undefined ? Number.NaN : 1 / hertz, fromSeconds = 0 } = options;
  if (!(Number.isFinite(periodSeconds) && periodSeconds > 0))
    return fail("invalid_option", "Give periodSeconds or hertz, a finite number above 0.", {
      field: "periodSeconds",
    });
  const prepared = prepareSolver(network, true);
  if (!prepared.ok) return prepared;
  const solver = prepared.value;
  const { hertz: _, periodSeconds: __, maxPeriods = 200, ...others } = options;
  const timing = { fromSeconds, untilSeconds: fromSeconds + periodSeconds };
  const whole: TransientOptions = { ...others, ...timing };
  const checked = checkOptions(whole);
  if (!checked.ok) return checked;
  const found = search(solver, whole, maxPeriods);
  if (!found.ok) return found;
  const { rows, end } = found.value.run;
  return succeed({ ...readRows(rows), periodSeconds, periods: found.value.periods, end });
}

function search(
  solver: Solver,
  options: TransientOptions,
  maxPeriods: number,
): Result<{ readonly run: Run; readonly periods: number }> {
  const { voltTolerance = 1e-6, ampTolerance = 1e-6, internalTolerance = 1e4 } = options;
  const integrator = createIntegrator(solver);
  const first = run(solver, integrator, options);
  if (!first.ok) return first;
  let periods = 1;
  let state = first.value.end;
  const free = listFreeCharges(solver.system, voltTolerance, ampTolerance, internalTolerance);
  if (free.slots.length === 0 && solver.guarded.length === 0) return succeed({ run: first.value, periods });
  const sensitivity = createSensitivity(solver.system, free.slots);
  const seconds = options.fromSeconds ?? 0;
  const { start: _, initialVolts: __, initialAmps: ___, ...onward } = options;
  const pass = (withSensitivity: boolean): Result<Run> => {
    periods++;
    if (withSensitivity) sensitivity.reset();
    const from = { ...state, seconds };
    return run(
      solver,
      integrator,
      { ...onward, continueFrom: from },
      withSensitivity ? sensitivity : undefined,
    );
  };
  const relative = options.relativeTolerance ?? 1e-4;
  let closed = 0;
  let worst = 0;
  let lastMove = Number.POSITIVE_INFINITY;
  for (let round = 0; periods < maxPeriods; round++) {
    const isNewton = round >= firstPeriods && round < firstPeriods + newtonRounds;
    const passed = pass(isNewton);
    if (!passed.ok) return passed;
    const before = state;
    const after = passed.value.end;
    state = after;
    const gap = compare(free, before.charge, after.charge, relative);
    worst = gap.worst;
    const sameStates = before.states.every((each, i) => each === after.states[i]);
    if (isNewton && sameStates) {
      const wanted = newtonStep(free, sensitivity, before.charge, after.charge);
      if (wanted) {
        const move = compare(free, before.charge, wanted, relative);
        // Where a period changes next to nothing, rounding keeps the last digits from coming to rest.
        const isAtLastDigits = gap.part < 1e-4 && move.part < 100 && move.part > lastMove / 2;
        if (move.part <= 1 || isAtLastDigits) return succeed({ run: passed.value, periods });
        lastMove = move.part;
        state = { ...after, charge: wanted };
        continue;
      }
    }
    // Without a Newton step the gap alone has to tell, and must stay small for a while.
    closed = gap.part <= 0.1 && sameStates ? closed + 1 : 0;
    if (closed >= 3 && !isNewton) return succeed({ run: passed.value, periods });
  }
  return { ok: false, error: notPeriodic(solver, free.rows[worst], periods) };
}

/** The largest difference of two sets of charges, as a part of what a step may err by. */
function compare(
  { slots, floor }: FreeCharges,
  a: Float64Array,
  b: Float64Array,
  relative: number,
): { readonly part: number; readonly worst: number } {
  let most = 0;
  let worst = 0;
  for (const [i, slot] of slots.entries()) {
    const size = Math.max(Math.abs(a[slot]), Math.abs(b[slot]));
    const part = Math.abs(a[slot] - b[slot]) / (relative * size + floor[i]);
    if (part <= most) continue;
    most = part;
    worst = i;
  }
  return { part: most, worst };
}

/** Charges at the start for which the period as linearised closes; undefined where it has no single answer. */
function newtonStep(
  { slots }: FreeCharges,
  sensitivity: Sensitivity,
  before: Float64Array,
  after: Float64Array,
): Float64Array | undefined {
  const n = slots.length;
  const matrix = new Float64Array(n * n);
  const gap = Float64Array.from(slots, (slot) => after[slot] - before[slot]);
  for (let row = 0; row < n; row++)
    for (let column = 0; column < n; column++)
      matrix[row * n + column] = Number(row === column) - sensitivity.at(row, column);
  if (!solveDense(matrix, gap)) return undefined;
  // What is held stays where the period has left it.
  const wanted = after.slice();
  for (const [i, slot] of slots.entries()) wanted[slot] = before[slot] + gap[i];
  return wanted;
}

function notPeriodic(solver: Solver, row: number, periods: number): CircuitError {
  const where = nameRow(row, solver.directory.numbering);
  const message = `${periods} periods do not lead to one that repeats itself; the worst is ${describeRow(where)}.`;
  return { code: "not_periodic", message, ...where };
}
