import type { NewtonSystem } from "../kernel/newton-system";
import type { Directory } from "../reading";
import { fail, type Result, succeed } from "../result";
import type { Solver } from "../solver";
import type { Recording } from "./options";

/** What a row is: a stage inside a step, the end of a step, or the start of what follows a jump. */
export const inside = 0;
export const stepEnd = 1;
export const start = 2;

/** Samples by row: its time, then one number per column. */
export interface Rows {
  readonly width: number;
  count: number;
  values: Float64Array;
  kinds: Uint8Array;
  /** Column of each signal, by `signalKey`. */
  readonly columns: ReadonlyMap<string, number>;
}

export const voltsKey = (node: string): string => `volts ${node}`;
export const ampsKey = (id: string): string => `amps ${id}`;
export const quantityKey = (id: string, name: string): string => `quantity ${id} ${name}`;

export interface Recorder {
  readonly rows: Rows;
  /** Notes the solver's solution as a row that counts once `keep` is called. */
  note(seconds: number, kind: number): void;
  /** Forgets what was noted since `keep`. */
  drop(): void;
  keep(): void;
  /** The last kept row, a start, is replaced by the next note. */
  dropStart(): void;
}

const firstRows = 256;

type Reader = (system: NewtonSystem) => number;

export function createRecorder(solver: Solver, recording: Recording | undefined): Result<Recorder> {
  const { directory } = solver;
  const {
    volts,
    amps,
    quantities = [],
  } = recording ?? {
    volts: directory.numbering.names,
    amps: directory.expanded.map(({ element }) => element.id),
  };
  const columns = new Map<string, number>();
  const readers: Reader[] = [];
  const add = (key: string, reader: Reader): void => {
    if (columns.has(key)) return;
    columns.set(key, readers.length + 1);
    readers.push(reader);
  };
  for (const node of volts ?? []) {
    const index = directory.numbering.indexOf.get(node);
    if (index === undefined) return fail("unknown_element", `There is no node "${node}".`, { node });
    add(voltsKey(node), ({ x }) => x.high[index] + x.low[index]);
  }
  for (const element of amps ?? []) {
    const at = directory.position.get(element);
    if (at === undefined) return unknown(element);
    const flows = directory.flowsOf[at];
    add(ampsKey(element), ({ x }) => {
      let sum = 0;
      for (let k = 0; k < flows.length; k += 2) sum += flows[k + 1] * x.amps[flows[k]];
      return sum;
    });
  }
  for (const { element, name } of quantities) {
    if (!directory.position.has(element)) return unknown(element);
    if (!hasQuantity(directory, solver, element, name)) {
      const message = `"${element}" has no quantity "${name}".`;
      return fail("unknown_element", message, { element });
    }
    add(quantityKey(element, name), quantityReader(solver, element, name));
  }
  const width = readers.length + 1;
  const rows: Rows = {
    width,
    count: 0,
    values: new Float64Array(firstRows * width),
    kinds: new Uint8Array(firstRows),
    columns,
  };
  let noted = 0;
  return succeed({
    rows,
    note(seconds, kind) {
      if (noted === rows.kinds.length) grow(rows);
      rows.values[noted * width] = seconds;
      for (let k = 0; k < readers.length; k++) rows.values[noted * width + k + 1] = readers[k](solver.system);
      rows.kinds[noted++] = kind;
    },
    drop() {
      noted = rows.count;
    },
    keep() {
      rows.count = noted;
    },
    dropStart() {
      if (rows.count > 0 && rows.kinds[rows.count - 1] === start) rows.count--;
      noted = rows.count;
    },
  });
}

const unknown = (element: string) =>
  fail("unknown_element", `There is no element "${element}".`, { element });

/** Read where it stands if it is an unknown of the equations; by the kind's rule otherwise. */
function quantityReader(solver: Solver, id: string, name: string): Reader {
  const { position, expanded, numbering } = solver.directory;
  const at = position.get(id) ?? -1;
  const { element, definition, parts, firstPart } = expanded[at];
  for (const [i, part] of parts.entries()) {
    if (part.kind !== "device") continue;
    const k = part.law.internals.findIndex((internal) => internal.name === name);
    const unknown = numbering.unknown[firstPart + i] + k;
    if (k >= 0) return ({ x }) => x.high[unknown] + x.low[unknown];
  }
  const look = solver.lookAt(at);
  return () => definition.quantities?.(element, solver.states[at], look)[name] ?? Number.NaN;
}

function hasQuantity({ position, expanded }: Directory, solver: Solver, id: string, name: string): boolean {
  const each = expanded[position.get(id) ?? -1];
  if (
    each.parts.some((p) => p.kind === "device" && p.law.internals.some((internal) => internal.name === name))
  )
    return true;
  const look = solver.lookAt(position.get(id) ?? -1);
  const stated = each.definition.quantities?.(each.element, 0, look);
  return stated !== undefined && Object.hasOwn(stated, name);
}

function grow(rows: Rows): void {
  const { values, kinds } = rows;
  rows.values = new Float64Array(2 * values.length);
  rows.values.set(values);
  rows.kinds = new Uint8Array(2 * kinds.length);
  rows.kinds.set(kinds);
}
