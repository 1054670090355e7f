import type { Circuit, OperatingPoint, SolveOptions } from "./circuit";
import {
  findIslands,
  type Islands,
  islandLeak,
  listLinks,
  refuseOpenCurrentSources,
  refuseVoltageLoops,
  tiesTerminals,
} from "./connectivity";
import { worstRow } from "./kernel/newton";
import { createNewtonSystem, type NewtonSystem, saveStart, stampLinear } from "./kernel/newton-system";
import type { CircuitElement, ElementChange, Network } from "./network";
import { type Numbering, numberUnknowns } from "./numbering";
import { type Directory, readOperatingPoint } from "./read-operating-point";
import { type CircuitError, fail, type Result, succeed } from "./result";
import { solve } from "./solve";
import { buildTables } from "./tables";
import { hasField, validateElement, validateField } from "./validate-element";

/**
 * Checks a network and does all work that depends on its topology only.
 *
 * Errors: invalid_element, duplicate_id, missing_ground, missing_control, voltage_loop.
 */
export function prepareCircuit(network: Network): Result<Circuit> {
  const byId = new Map<string, CircuitElement>();
  for (const element of network.elements) {
    const valid = validateElement(element);
    if (!valid.ok) return valid;
    if (byId.has(element.id)) {
      return fail("duplicate_id", `Two elements are called "${element.id}".`, { element: element.id });
    }
    byId.set(element.id, element);
  }
  const numbered = numberUnknowns(network, byId);
  if (!numbered.ok) return numbered;
  const loops = refuseVoltageLoops(network.elements, numbered.value);
  if (!loops.ok) return loops;
  return succeed(createCircuit(byId, numbered.value));
}

/** Prepares a network and solves it once. */
export function operatingPoint(network: Network, options?: SolveOptions): Result<OperatingPoint> {
  const circuit = prepareCircuit(network);
  return circuit.ok ? circuit.value.operatingPoint(options) : circuit;
}

function createCircuit(byId: Map<string, CircuitElement>, numbering: Numbering): Circuit {
  const { pattern, tables, bindings } = buildTables([...byId.values()], numbering);
  const position = new Map([...byId.keys()].map((id, i) => [id, i]));
  const currentSources = [...byId.values()].filter((e) => e.kind === "currentSource").map((e) => e.id);
  const directory: Directory = { numbering, bindings, position };
  const system = createNewtonSystem(pattern, tables);
  const elements = [...byId.values()];
  const links = listLinks(elements, numbering);
  const ties = Uint8Array.from(elements, (element) => (tiesTerminals(element) ? 1 : 0));
  let islands: Islands | undefined;
  let stamped = false;
  let hasSolution = false;

  const connect = (): Islands => {
    const found = findIslands(links, ties, numbering);
    system.leak.fill(0);
    for (const node of found.floating) system.leak[node] = islandLeak;
    return found;
  };

  return {
    nodes: numbering.names,
    set(id, change) {
      const element = byId.get(id);
      if (!element) return fail("unknown_element", `There is no element "${id}".`, { element: id });
      const changed = applyChange(element, change);
      if (!changed.ok) return changed;
      byId.set(id, changed.value);
      const at = position.get(id) ?? -1;
      bindings[at].write(changed.value);
      stamped = false;
      const tied = tiesTerminals(changed.value) ? 1 : 0;
      if (ties[at] !== tied) islands = undefined;
      ties[at] = tied;
      return succeed(undefined);
    },
    operatingPoint(options = {}) {
      islands ??= connect();
      if (!stamped) stampLinear(system);
      stamped = true;
      const sources = currentSources.flatMap((id) => byId.get(id) ?? []);
      const open = refuseOpenCurrentSources(sources, numbering, islands);
      if (!open.ok) return open;
      const outcome = solve(system, hasSolution, options);
      hasSolution = outcome.kind === "converged";
      if (outcome.kind === "singular") return { ok: false, error: singularAt(outcome.row, numbering) };
      if (outcome.kind === "stuck")
        return { ok: false, error: unconverged(system, numbering, outcome.iterations) };
      return succeed(readOperatingPoint(system, directory, islands.floating, outcome.iterations));
    },
    startingPoint: () => (hasSolution ? saveStart(system) : undefined),
  };
}

/** Optional fields that decide the topology: they may change but not appear. */
const topological: readonly string[] = ["seriesOhms"];

function applyChange(element: CircuitElement, change: ElementChange): Result<CircuitElement> {
  for (const field of Object.keys(change)) {
    const where = { element: element.id, field };
    if (!hasField(element, field)) {
      return fail(
        "invalid_element",
        `"${element.id}" is a ${element.kind} and has no ${field} to change.`,
        where,
      );
    }
    const decides = topological.includes(field) || (field === "ohms" && element.kind === "voltageSource");
    if (decides && !(field in element)) {
      return fail(
        "invalid_element",
        `"${element.id}" was prepared without ${field}; prepare it anew.`,
        where,
      );
    }
  }
  const changed: CircuitElement = { ...element, ...change };
  for (const field of Object.keys(change)) {
    const valid = validateField(changed, field);
    if (!valid.ok) return valid;
  }
  return succeed(changed);
}

/** Whose equation a row is, in the network's own words. */
function nameRow(row: number, numbering: Numbering): { node?: string; element?: string } {
  for (const [node, index] of numbering.indexOf) if (index === row) return { node };
  for (const [element, index] of numbering.junctionNode) if (index === row) return { element };
  for (const [element, index] of numbering.branchUnknown) if (index === row) return { element };
  return {};
}

const describe = (where: { node?: string; element?: string }): string =>
  where.node === undefined ? `element "${where.element}"` : `node "${where.node}"`;

function singularAt(row: number, numbering: Numbering): CircuitError {
  const where = nameRow(row, numbering);
  return { code: "singular", message: `The network has no single answer at ${describe(where)}.`, ...where };
}

function unconverged(system: NewtonSystem, numbering: Numbering, iterations: number): CircuitError {
  const where = nameRow(worstRow(system), numbering);
  const message = `No operating point after ${iterations} iterations; the worst is ${describe(where)}.`;
  return { code: "no_convergence", message, ...where };
}
