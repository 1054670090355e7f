import type { OperatingPoint, SolveOptions, StartingPoint } from "./circuit";
import {
  findIslands,
  type Islands,
  islandLeak,
  listLinks,
  refuseOpenCurrentSource,
  tiesTerminals,
} from "./connectivity";
import type { Guard, Look, Part } from "./elements/definition";
import type { Expanded } from "./expansion";
import { createNewtonSystem, type NewtonSystem, saveStart } from "./kernel/newton-system";
import { singularAt, unconverged } from "./name-row";
import type { CircuitElement, ElementChange } from "./network";
import type { Numbering } from "./numbering";
import { type Directory, type Figures, lookInto, readFigures } from "./reading";
import { type CircuitError, fail, type Result, succeed } from "./result";
import { solve } from "./solve";
import { buildTables } from "./tables";
import { refuse, validateField } from "./validate-element";

/** A prepared network with its numbers and its last solution: what circuits and transients are built on. */
export interface Solver {
  readonly directory: Directory;
  readonly system: NewtonSystem;
  /** Discrete state by element. */
  readonly states: Int32Array;
  set(id: string, change: ElementChange): Result<void>;
  /** Makes `part` take the numbers of `element` in its present state; `at` is the element's position. */
  enterState(at: number, state: number): void;
  solve(options?: SolveOptions): Result<OperatingPoint>;
  /** Brings leaks and checks that depend on what is tied to what up to date. */
  connect(): Result<void>;
  /** The last solution, frozen. */
  snapshot(): OperatingPoint;
  startingPoint(): StartingPoint | undefined;
  /** The state that the most urgent guard of element `at` asks for, or undefined when none is due. */
  dueState(at: number): number | undefined;
  /** Positions of the elements that have guards. */
  readonly guarded: readonly number[];
  /** Guards of element `at` where the solver stands; minutes pass only while there is a rate of time. */
  guardsOf(at: number): readonly Guard[];
  /** What the rules of element `at` see of the solver's own solution. */
  lookAt(at: number): Look;
  /** The solver's own solution under its names, moving with it. */
  readonly view: OperatingPoint;
}

const done = succeed(undefined);
const noOptions: SolveOptions = {};

export function createSolver(expanded: readonly Expanded[], numbering: Numbering, timed: boolean): Solver {
  const parts: Part[] = expanded.flatMap((each) => each.parts);
  const owners = expanded.flatMap(({ parts: own }, at) => own.map(() => at));
  const { pattern, flows, tables, bindings } = buildTables(parts, numbering);
  const system = createNewtonSystem(pattern, flows, tables);
  const position = new Map(expanded.map(({ element }, i) => [element.id, i]));
  const states = Int32Array.from(
    expanded,
    ({ element, definition }) => definition.initialState?.(element) ?? 0,
  );
  const initialStates = states.slice();
  const guarded = expanded.flatMap(({ isGuarded }, at) => (isGuarded ? [at] : []));
  const currentParts = parts.flatMap((part, i) => (part.kind === "currentSource" ? [i] : []));
  const links = listLinks(numbering);
  const ties = Uint8Array.from(parts, (part) => Number(tiesTerminals(part)));
  const stores = timed ? Uint8Array.from(parts, (part) => Number(part.kind === "capacitor")) : undefined;
  let islands: Islands | undefined;
  let sourcesAreChecked = false;
  let wasMoving = false;
  let hasSolution = false;

  const directory: Directory = {
    numbering,
    expanded,
    position,
    partFlow: Int32Array.from(bindings, (binding) => binding.flow),
    partFlowCount: Int32Array.from(bindings, (binding) => binding.flowCount),
    flowsOf: expanded.map(({ element, definition, parts: own, firstPart }) =>
      Int32Array.from(
        definition.amps(element, timed).flatMap(([id, sign]) => {
          const { flow, flowCount } = bindings[firstPart + own.findIndex((part) => part.id === id)];
          return Array.from({ length: flowCount }, (_, k) => [flow + k, sign]).flat();
        }),
      ),
    ),
  };
  const live: Figures = {
    high: system.x.high,
    low: system.x.low,
    amps: system.x.amps,
    states,
    isTimed: timed,
    get iterations() {
      return system.iterations;
    },
    get residualAmps() {
      return largestResidual(system);
    },
    get floating() {
      return islands?.floating ?? [];
    },
  };
  const view = { ok: true, value: readFigures(live, directory) } as const;

  const writePart = (i: number, part: Part): void => {
    const binding = bindings[i];
    if (binding.write(part)) {
      system.linearIsCurrent = false;
      for (const row of binding.rows) system.x.stale[row] = 1;
    }
    parts[i] = part;
    const tied = Number(tiesTerminals(part));
    if (ties[i] !== tied) islands = undefined;
    ties[i] = tied;
    if (part.kind === "currentSource") sourcesAreChecked = false;
  };
  const writeElement = (at: number): void => {
    const { element, definition, firstPart } = expanded[at];
    const made = definition.parts(element, states[at], timed);
    for (let i = 0; i < made.length; i++) writePart(firstPart + i, made[i]);
  };
  const enterState = (at: number, state: number): void => {
    states[at] = state;
    writeElement(at);
  };
  const enterStates = (wanted: Int32Array): void => {
    for (const at of guarded) if (states[at] !== wanted[at]) enterState(at, wanted[at]);
  };

  const connect = (): Result<void> => {
    if (!islands) {
      islands = findIslands(links, ties, numbering);
      setLeaks(system, islands.floating);
      sourcesAreChecked = false;
    }
    const isMoving = system.x.rate !== 0;
    if (sourcesAreChecked && wasMoving === isMoving) return done;
    // While time passes, a current may charge a capacitor.
    const allTies = stores && isMoving ? ties.map((tie, i) => tie | stores[i]) : undefined;
    const ways = allTies ? findIslands(links, allTies, numbering) : islands;
    for (const i of currentParts) {
      const part = parts[i];
      if (part.kind !== "currentSource") continue;
      const owner = expanded[owners[i]].element.id;
      const refused = refuseOpenCurrentSource(owner, part, numbering.nodes[i], ways, numbering);
      if (!refused.ok) return refused;
    }
    sourcesAreChecked = true;
    wasMoving = isMoving;
    return done;
  };

  const looks = new Map<number, Look>();
  const lookAt = (at: number): Look => {
    const known = looks.get(at);
    if (known) return known;
    const look = lookInto(at, live, directory);
    looks.set(at, look);
    return look;
  };
  const guardsOf = (at: number): readonly Guard[] => {
    const { element, definition } = expanded[at];
    // The operating point that a transient starts from is one: nothing is on its way there.
    return definition.guards?.(element, states[at], lookAt(at), timed && system.x.rate !== 0) ?? [];
  };
  const dueState = (at: number): number | undefined => {
    const guards = guardsOf(at);
    let most = 0;
    let due: number | undefined;
    for (const { value, next } of guards) {
      if (!(value > most)) continue;
      most = value;
      due = next;
    }
    return due;
  };

  const solveOnce = (options: SolveOptions): CircuitError | undefined => {
    const connected = connect();
    if (!connected.ok) return connected.error;
    const outcome = solve(system, hasSolution, options);
    hasSolution = outcome === "converged";
    if (hasSolution) return undefined;
    return outcome === "singular"
      ? singularAt(system.singularRow, numbering)
      : unconverged(system, numbering);
  };

  return {
    directory,
    system,
    states,
    connect,
    enterState,
    dueState,
    guarded,
    guardsOf,
    lookAt,
    view: view.value,
    set(id, change) {
      const at = position.get(id);
      if (at === undefined) return fail("unknown_element", `There is no element "${id}".`, { element: id });
      const changed = applyChange(expanded[at], change);
      if (changed.ok) writeElement(at);
      return changed;
    },
    solve(options = noOptions) {
      const { startFrom, warmStart = true, stateRounds = 50 } = options;
      if (guarded.length > 0) {
        if (startFrom) enterStates(startFrom.states);
        else if (!warmStart) enterStates(initialStates);
      }
      const error = solveOnce(options);
      if (error) return { ok: false, error };
      for (let round = 0; guarded.length > 0; round++) {
        let moved = -1;
        // Found first and entered after, so that all see the same solution.
        const due = guarded.map(dueState);
        for (const [i, state] of due.entries()) {
          if (state === undefined) continue;
          moved = guarded[i];
          enterState(moved, state);
        }
        if (moved < 0) break;
        if (round >= stateRounds) {
          const element = expanded[moved].element.id;
          hasSolution = false;
          return fail("no_convergence", `"${element}" keeps changing its state; there is no rest.`, {
            element,
          });
        }
        const { startFrom: _, ...onward } = options;
        const failed = solveOnce({ ...onward, warmStart: true });
        if (failed) return { ok: false, error: failed };
      }
      return view;
    },
    snapshot: () =>
      readFigures(
        {
          high: live.high.slice(),
          low: live.low.slice(),
          amps: live.amps.slice(),
          states: states.slice(),
          iterations: live.iterations,
          residualAmps: live.residualAmps,
          floating: live.floating,
          isTimed: timed,
        },
        directory,
      ),
    startingPoint: () => (hasSolution ? { ...saveStart(system), states: states.slice() } : undefined),
  };
}

/** Largest sum of currents at any node. */
function largestResidual({ pattern, x }: NewtonSystem): number {
  let most = 0;
  for (let node = 0; node < pattern.nodeCount; node++) most = Math.max(most, Math.abs(x.residual[node]));
  return most;
}

function setLeaks(system: NewtonSystem, floating: readonly number[]): void {
  const { leak, x } = system;
  const before = leak.slice();
  leak.fill(0);
  for (const node of floating) leak[node] = islandLeak;
  for (let node = 0; node < leak.length; node++) {
    if (leak[node] === before[node]) continue;
    x.stale[node] = 1;
    system.linearIsCurrent = false;
  }
}

/** Checks a change and makes it in place; nothing changes when an error comes back. */
function applyChange({ element, definition }: Expanded, change: ElementChange): Result<void> {
  const fields = element as unknown as Record<string, unknown>;
  const wanted = change as Readonly<Record<string, unknown>>;
  for (const field in wanted) {
    const where = { element: element.id, field };
    if (!Object.hasOwn(definition.fields, field)) {
      const message = `"${element.id}" is a ${element.kind} and has no ${field} to change.`;
      return fail("invalid_element", message, where);
    }
    if (definition.topological?.includes(field) && fields[field] === undefined) {
      const message = `"${element.id}" was prepared without ${field}; prepare it anew.`;
      return fail("invalid_element", message, where);
    }
    const valid = validateField(element.id, definition, field, wanted[field]);
    if (!valid.ok) return valid;
  }
  if (definition.refuse) {
    const valid = refuse({ ...element, ...wanted } as CircuitElement, definition);
    if (!valid.ok) return valid;
  }
  for (const field in wanted) fields[field] = wanted[field];
  return done;
}
