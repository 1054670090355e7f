import { evaluate, resetTo, resetToCold } from "../kernel/newton-system";
import { fail, type Result, succeed } from "../result";
import type { Solver } from "../solver";
import type { TransientOptions, TransientState } from "./options";

const done = succeed(undefined);

/** Leaves the charges that a run starts from in `charge`, and the solver standing where Newton's method can start. */
export function startCharge(solver: Solver, options: TransientOptions, charge: Float64Array): Result<void> {
  const { continueFrom, start = "operatingPoint" } = options;
  if (continueFrom) resume(solver, continueFrom, charge);
  else if (start === "rest") rest(solver, charge);
  else {
    const settled = settle(solver, charge);
    if (!settled.ok) return settled;
  }
  return setInitial(solver, options, charge);
}

function settle(solver: Solver, charge: Float64Array): Result<void> {
  stopTime(solver);
  // The same start gives the same run, whatever ran before.
  solver.system.factor = solver.system.firstFactor;
  const solved = solver.solve({ warmStart: false });
  if (!solved.ok) return solved;
  readCharge(solver, charge);
  return done;
}

/** Charges where the solver stands, read with time running: that is when laws store anything. */
function readCharge(solver: Solver, charge: Float64Array): void {
  const { system } = solver;
  system.x.rate = 1;
  evaluate(system);
  charge.set(system.x.charge);
  stopTime(solver);
}

function rest(solver: Solver, charge: Float64Array): void {
  const { system, directory, states } = solver;
  stopTime(solver);
  for (const at of solver.guarded) {
    const { element, definition } = directory.expanded[at];
    const state = definition.initialState?.(element) ?? 0;
    if (states[at] !== state) solver.enterState(at, state);
  }
  resetToCold(system);
  readCharge(solver, charge);
}

function resume(solver: Solver, from: TransientState, charge: Float64Array): void {
  const { system, states } = solver;
  for (const at of solver.guarded) if (states[at] !== from.states[at]) solver.enterState(at, from.states[at]);
  resetTo(system, from);
  charge.set(from.charge);
}

function stopTime({ system }: Solver): void {
  system.x.rate = 0;
  system.x.history.fill(0);
  system.linearIsCurrent = false;
  system.x.stale.fill(1);
}

/** Writes the charges of named capacitors and the fluxes of named inductors. */
function setInitial(solver: Solver, options: TransientOptions, charge: Float64Array): Result<void> {
  const { capacitor, branch } = solver.system.tables;
  for (const [id, volts] of Object.entries(options.initialVolts ?? {})) {
    const row = rowOf(solver, id, "capacitor");
    if (row === undefined) return refuse(id, "capacitor", "initialVolts");
    if (!Number.isFinite(volts)) return notFinite(id, "initialVolts");
    charge[capacitor.slot + row] = capacitor.farads[row] * volts;
  }
  for (const [id, amps] of Object.entries(options.initialAmps ?? {})) {
    const row = rowOf(solver, id, "inductor");
    if (row === undefined) return refuse(id, "inductor", "initialAmps");
    if (!Number.isFinite(amps)) return notFinite(id, "initialAmps");
    charge[branch.slot + row] = branch.henries[row] * amps;
  }
  return done;
}

/** Row in its table of the part called `id`, which may be inside an element ("K1#winding"). */
function rowOf(
  { directory, system }: Solver,
  id: string,
  kind: "capacitor" | "inductor",
): number | undefined {
  const { capacitor, branch } = system.tables;
  for (const { parts, firstPart } of directory.expanded) {
    for (const [i, part] of parts.entries()) {
      if (part.id !== id || part.kind !== kind) continue;
      const flow = directory.partFlow[firstPart + i];
      return kind === "capacitor" ? flow - capacitor.flow : (flow - branch.flow) / 2;
    }
  }
  return undefined;
}

const refuse = (element: string, kind: string, field: string) =>
  fail("unknown_element", `${field} names "${element}", which is no ${kind} of this network.`, {
    element,
    field,
  });
const notFinite = (element: string, field: string) =>
  fail("invalid_option", `${field} of "${element}" must be a finite number.`, { element, field });
