import type { Attachable } from "./attachable";
import {
  type Attachments,
  attachedPart,
  buildAttachments,
  checkAttachable,
  freezeAttached,
  tiedPairs,
} from "./attachments";
import { applyChange } from "./change-element";
import type { OperatingPoint, Responses, SolveOptions, StartingPoint, Thevenin } from "./circuit";
import { findIslands, type Islands, listLinks, refuseOpenCurrentSource, tiesTerminals } from "./connectivity";
import type { Guard, Look, Part } from "./elements/definition";
import { definitionOf } from "./elements/registry";
import type { Expanded } from "./expansion";
import { setLeaks } from "./island-leaks";
import { createNewtonSystem, largestResidual, type NewtonSystem, saveStart } from "./kernel/newton-system";
import { singularAt, unconverged } from "./name-row";
import type { ElementChange, NodeName } from "./network";
import type { Numbering } from "./numbering";
import {
  createDirectory,
  type Directory,
  type Figures,
  freezeFigures,
  lookInto,
  readFigures,
} from "./reading";
import { findResponses } from "./responses";
import { type CircuitError, fail, type Result, succeed } from "./result";
import { solve } from "./solve";
import { buildTables } from "./tables";
import { findThevenin } from "./thevenin";

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
  /** Lays an element across the network, or takes it away again; see Circuit. */
  attach(element: Attachable): Result<void>;
  detach(id: string): Result<void>;
  thevenin(a: NodeName, b: NodeName, options?: SolveOptions): Result<Thevenin>;
  responses(pairs: readonly (readonly [NodeName, NodeName])[], options?: SolveOptions): Result<Responses>;
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
  const { finishPattern, flows, tables, bindings } = buildTables(parts, numbering);
  const system = createNewtonSystem(finishPattern(), flows, tables);
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
  let attached: readonly Attachable[] = [];
  /** Tables of what is attached, made at the next solve. */
  let attachments: Attachments | undefined;
  let sourcesAreChecked = false;
  let wasMoving = false;
  let hasSolution = false;
  // True while flows and residual are those of the last solution with the present numbers.
  let isAtRest = false;

  const directory = createDirectory(expanded, numbering, bindings, timed);
  const { position } = directory;
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
    get attached() {
      return attachments;
    },
  };
  const view = { ok: true, value: readFigures(live, directory) } as const;

  const writePart = (i: number, part: Part): void => {
    const binding = bindings[i];
    if (binding.write(part)) {
      if (!binding.isEdge) system.linearIsCurrent = false;
      for (const row of binding.rows) system.x.stale[row] = 1;
    }
    if (isAtRest && binding.refresh) binding.refresh(system.x);
    else isAtRest = false;
    parts[i] = part;
    const tied = Number(tiesTerminals(part));
    if (ties[i] !== tied) islands = undefined;
    ties[i] = tied;
    if (part.kind === "currentSource") sourcesAreChecked = false;
  };
  const writeElement = (at: number): void => {
    const { element, definition, firstPart, parts: prepared, isItself } = expanded[at];
    const made = isItself ? prepared : definition.parts(element, states[at], timed);
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
      attachments ??= buildAttachments(attached, numbering, system);
      system.ports = attachments?.ports;
      const alone = findIslands(links, ties, numbering);
      islands = attachments ? findIslands(links, ties, numbering, tiedPairs(attachments)) : alone;
      setLeaks(system, islands, alone);
      sourcesAreChecked = false;
      isAtRest = false;
    }
    const isMoving = system.x.rate !== 0;
    if (sourcesAreChecked && wasMoving === isMoving) return done;
    // While time passes, a current may charge a capacitor.
    const allTies = stores && isMoving ? ties.map((tie, i) => tie | stores[i]) : undefined;
    const others = attachments ? tiedPairs(attachments) : [];
    const ways = allTies ? findIslands(links, allTies, numbering, others) : islands;
    for (const i of currentParts) {
      const refused = refuseOpenCurrentSource(
        expanded[owners[i]].element.id,
        parts[i],
        numbering.nodes[i],
        ways,
        numbering,
      );
      if (!refused.ok) return refused;
    }
    for (const [i, element] of (attachments?.elements ?? []).entries()) {
      const rows = attachments?.nodes[i] ?? [];
      const refused = refuseOpenCurrentSource(element.id, element, rows, ways, numbering);
      if (!refused.ok) return refused;
    }
    sourcesAreChecked = true;
    wasMoving = isMoving;
    return done;
  };

  const setAttached = (elements: readonly Attachable[]): void => {
    attached = elements;
    attachments = undefined;
    system.ports = undefined;
    islands = undefined;
  };
  const setAttachedNumbers = (id: string, change: ElementChange): Result<void> | undefined => {
    const at = attached.findIndex((element) => element.id === id);
    if (at < 0) return undefined;
    const element = attached[at];
    const changed = applyChange({ element, definition: definitionOf(element) }, change);
    if (changed.ok) {
      attachments?.bindings[at].write(attachedPart(element));
      islands = undefined;
      isAtRest = false;
    }
    return changed;
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
    const outcome = solve(system, hasSolution, isAtRest, options);
    hasSolution = outcome === "converged";
    isAtRest = hasSolution && !timed;
    if (hasSolution) return undefined;
    return outcome === "singular"
      ? singularAt(system.singularRow, numbering)
      : unconverged(system, numbering);
  };

  const rowsOf = (nodes: readonly NodeName[]): Result<number[]> => {
    const rows: number[] = [];
    for (const node of nodes) {
      const row = numbering.indexOf.get(node);
      if (row === undefined) return fail("unknown_node", `There is no node "${node}".`, { node });
      rows.push(row);
    }
    return succeed(rows);
  };

  const solver: Solver = {
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
      if (at === undefined) return setAttachedNumbers(id, change) ?? unknownElement(id);
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
    attach(element) {
      const isTaken = (id: string) => position.has(id) || attached.some((other) => other.id === id);
      const checked = checkAttachable(element, isTaken, attached.length, numbering);
      if (checked.ok) setAttached([...attached, { ...element }]);
      return checked;
    },
    detach(id) {
      const kept = attached.filter((element) => element.id !== id);
      if (kept.length === attached.length) return unknownElement(id);
      setAttached(kept);
      return done;
    },
    thevenin(a, b, options) {
      const rows = rowsOf([a, b]);
      if (!rows.ok) return rows;
      const solved = solver.solve(options);
      if (!solved.ok) return solved;
      const [from, to] = rows.value;
      const isTied = islands?.sets.find(from) === islands?.sets.find(to);
      isAtRest = false;
      const found = findThevenin(system, from, to, isTied);
      return found ? succeed(found) : { ok: false, error: singularAt(system.singularRow, numbering) };
    },
    responses(pairs, options) {
      const rows = rowsOf(pairs.flat());
      if (!rows.ok) return rows;
      const solved = solver.solve(options);
      if (!solved.ok) return solved;
      isAtRest = false;
      const found = findResponses(
        system,
        pairs.map((_, at) => [rows.value[2 * at], rows.value[2 * at + 1]]),
      );
      if (!found) return { ok: false, error: singularAt(system.singularRow, numbering) };
      return succeed({
        ohms: (at, node) => {
          const row = numbering.indexOf.get(node);
          if (row === undefined) throw new Error(`The network has no node "${node}".`);
          return found.ohms(at, row);
        },
        holds: (amps) => {
          const isStraight = found.go(amps);
          found.back();
          return isStraight;
        },
        shifted: (amps) => {
          found.go(amps);
          const point = solver.snapshot();
          found.back();
          return point;
        },
      });
    },
    snapshot: () => readFigures({ ...freezeFigures(live), attached: freezeAttached(attachments) }, directory),
    startingPoint: () => (hasSolution ? { ...saveStart(system), states: states.slice() } : undefined),
  };
  return solver;
}

const unknownElement = (id: string): Result<void> =>
  fail("unknown_element", `There is no element "${id}".`, { element: id });
