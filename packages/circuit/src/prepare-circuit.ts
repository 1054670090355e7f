import type { Circuit, OperatingPoint, SolveOptions } from "./circuit";
import { refuseVoltageLoops } from "./connectivity";
import { expand } from "./expansion";
import type { CircuitElement, Network } from "./network";
import { numberUnknowns } from "./numbering";
import { fail, type Result, succeed } from "./result";
import { createSolver, type Solver } from "./solver";
import { validateElement } from "./validate-element";

/**
 * Checks a network and does all work that depends on its topology only.
 *
 * Errors: invalid_element, duplicate_id, missing_ground, missing_control, voltage_loop.
 */
export function prepareCircuit(network: Network): Result<Circuit> {
  const solver = prepareSolver(network, false);
  if (!solver.ok) return solver;
  const { value } = solver;
  return succeed({
    nodes: value.directory.numbering.names,
    set: value.set,
    solve: value.solve,
    operatingPoint: (options) => {
      const solved = value.solve(options);
      return solved.ok ? succeed(value.snapshot()) : solved;
    },
    attach: value.attach,
    detach: value.detach,
    thevenin: value.thevenin,
    responses: value.responses,
    startingPoint: value.startingPoint,
    get operations() {
      return value.system.tally.operations;
    },
  });
}

/** Prepares a network and solves it once. */
export function operatingPoint(network: Network, options?: SolveOptions): Result<OperatingPoint> {
  const circuit = prepareCircuit(network);
  return circuit.ok ? circuit.value.operatingPoint(options) : circuit;
}

/** `timed` makes the unknowns that a transient needs. */
export function prepareSolver(network: Network, timed: boolean): Result<Solver> {
  const known = new Set<string>();
  for (const element of network.elements) {
    const valid = validateElement(element);
    if (!valid.ok) return valid;
    if (known.has(element.id)) {
      return fail("duplicate_id", `Two elements are called "${element.id}".`, { element: element.id });
    }
    known.add(element.id);
  }
  // Copies, because numbers are changed in place.
  const elements = network.elements.map((element): CircuitElement => ({ ...element }));
  const expanded = expand(elements, timed);
  const numbered = numberUnknowns(network, expanded);
  if (!numbered.ok) return numbered;
  const loops = refuseVoltageLoops(expanded, numbered.value, timed);
  if (!loops.ok) return loops;
  return succeed(createSolver(expanded, numbered.value, timed));
}
