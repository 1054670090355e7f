import { across, type Evaluation, isSlopeKept } from "../kernel/iterate";
import type { DeviceLaw, LawOutput } from "./law";
import type { Builders } from "./two-terminal";

/** Devices stated as equations; see DeviceLaw. */
export interface LawTable {
  readonly devices: readonly PlacedLaw[];
}

export interface PlacedLaw {
  readonly law: DeviceLaw<unknown>;
  /** Replaced as a whole when a number of the element changes. */
  parameters: unknown;
  /** Rows of the terminals, the last one last. */
  readonly nodes: Int32Array;
  /** Unknown and row of each internal unknown. */
  readonly unknowns: Int32Array;
  /** Flow into terminal 0 and out of the last one; the next terminals follow. */
  readonly flow: number;
  /** Slot of the stored quantity of equation 0; the others follow. */
  readonly slot: number;
  /** Entry for each place of the local matrix, and for the last terminal's row and column around it. */
  readonly entry: Int32Array;
  readonly x: Float64Array;
  /** x of the last evaluation. */
  readonly last: Float64Array;
  /** Local matrix in the Jacobian. */
  readonly held: Float64Array;
  readonly out: LawOutput;
}

export interface LawPlacement {
  readonly law: DeviceLaw<unknown>;
  readonly nodes: readonly number[];
  readonly unknowns: readonly number[];
  readonly slot: number;
}

export const sizeOf = (law: DeviceLaw<unknown>): number => law.terminals - 1 + law.internals.length;

export function placeLaw(placement: LawPlacement, { pattern, flows }: Builders): PlacedLaw {
  const { law, nodes, unknowns, slot } = placement;
  const inner = law.terminals - 1;
  const size = sizeOf(law);
  const last = nodes[inner];
  const flow = flows.next();
  for (let k = 0; k < inner; k++) flows.add(nodes[k], last);
  const rows = [...nodes.slice(0, inner), ...unknowns];
  // Row and column `size` of the local pattern belong to the last terminal.
  const entry = [...rows, last].flatMap((row) => [...rows, last].map((column) => pattern.entry(row, column)));
  return {
    law,
    parameters: undefined,
    nodes: Int32Array.from(nodes),
    unknowns: Int32Array.from(unknowns),
    flow,
    slot,
    entry: Int32Array.from(entry),
    x: new Float64Array(size),
    last: new Float64Array(size),
    held: new Float64Array(size * size),
    out: {
      size,
      f: new Float64Array(size),
      q: new Float64Array(size),
      df: new Float64Array(size * size),
      dq: new Float64Array(size * size),
      isStatic: true,
      seconds: 0,
    },
  };
}

/** Cold start: the internal unknowns at their initial values. */
export function resetLaws(table: LawTable, high: Float64Array): void {
  for (const device of table.devices) {
    const initial = device.law.initial(device.parameters);
    device.last.fill(0);
    device.unknowns.forEach((unknown, k) => {
      high[unknown] = initial[k];
      device.last[device.law.terminals - 1 + k] = initial[k];
    });
  }
}

/** Adds each device. Returns how many were evaluated short of the iterate. */
export function evaluateLaws(table: LawTable, x: Evaluation): number {
  let limited = 0;
  for (const device of table.devices) if (evaluateLaw(device, x)) limited++;
  return limited;
}

function evaluateLaw(device: PlacedLaw, x: Evaluation): boolean {
  const { law, nodes, unknowns, out, last } = device;
  const inner = law.terminals - 1;
  const { size, f, q, df, dq } = out;
  const local = device.x;
  for (let k = 0; k < inner; k++) local[k] = across(x, nodes[k], nodes[inner]);
  for (let k = 0; k < unknowns.length; k++) local[inner + k] = x.high[unknowns[k]] + x.low[unknowns[k]];
  out.isStatic = x.rate === 0;
  const limited = x.isLimiting && (law.limit?.(device.parameters, local, last, out.isStatic) ?? false);
  // Loops, because `fill` and `set` cost more than they do on arrays this short.
  for (let k = 0; k < size; k++) {
    last[k] = local[k];
    f[k] = 0;
    q[k] = 0;
  }
  for (let k = 0; k < df.length; k++) {
    df[k] = 0;
    dq[k] = 0;
  }
  out.seconds = x.seconds;
  law.evaluate(device.parameters, local, out);
  renewSlopes(device, x);
  for (let row = 0; row < size; row++) {
    x.charge[device.slot + row] = q[row];
    let value = f[row] + x.rate * q[row] + x.history[device.slot + row];
    if (limited) value += beyondLimit(device, x, row);
    if (row < inner) x.amps[device.flow + row] = value;
    else x.residual[unknowns[row - inner]] += value;
  }
  return limited;
}

/** What the tangent adds to row `row` from the limited point to the iterate. */
function beyondLimit(device: PlacedLaw, x: Evaluation, row: number): number {
  const { nodes, unknowns, out, law } = device;
  const inner = law.terminals - 1;
  let sum = 0;
  for (let k = 0; k < out.size; k++) {
    const actual =
      k < inner
        ? across(x, nodes[k], nodes[inner])
        : x.high[unknowns[k - inner]] + x.low[unknowns[k - inner]];
    sum += device.held[row * out.size + k] * (actual - device.x[k]);
  }
  return sum;
}

/** All slopes of a device are held or renewed together. */
function renewSlopes(device: PlacedLaw, x: Evaluation): void {
  const { held, out, nodes, unknowns } = device;
  let isKept = true;
  for (let k = 0; k < held.length && isKept; k++)
    isKept = isSlopeKept(x, held[k], out.df[k] + x.rate * out.dq[k]);
  if (isKept) return;
  for (let k = 0; k < held.length; k++) held[k] = out.df[k] + x.rate * out.dq[k];
  for (const node of nodes) x.stale[node] = 1;
  for (const unknown of unknowns) x.stale[unknown] = 1;
  x.jacobianIsCurrent = false;
}

export function stampLaws(table: LawTable, jacobian: Float64Array): void {
  for (const device of table.devices) stampLaw(device, jacobian);
}

/** The local matrix, with the row and the column of the last terminal that make the terminals' rows and columns sum to zero. */
function stampLaw(device: PlacedLaw, jacobian: Float64Array): void {
  const { held, out, entry, law } = device;
  const { size } = out;
  const inner = law.terminals - 1;
  const stride = size + 1;
  for (let row = 0; row < size; row++) {
    let sum = 0;
    for (let column = 0; column < size; column++) {
      const value = held[row * size + column];
      jacobian[entry[row * stride + column]] += value;
      if (column < inner) sum += value;
      if (row < inner) jacobian[entry[size * stride + column]] -= value;
    }
    jacobian[entry[row * stride + size]] -= sum;
    if (row < inner) jacobian[entry[size * stride + size]] += sum;
  }
}

/**
 * What a terminal's current may be off by, as a part of the terms that it is the sum of, over the part of the throughput
 * that a residual may reach (see kernel/newton): some units in the last place, 4e-15 over 1e-9.
 */
const roundingShare = 4e-6;

/**
 * Adds to the row of each internal unknown the size of its terms: the yardstick of its residual. The current into a
 * terminal has been added already as a flow; but where it is what remains of large currents inside the device, it is no
 * better than their rounding.
 */
export function measureLaws(table: LawTable, x: Evaluation, throughput: Float64Array): void {
  for (const device of table.devices) {
    const { out, nodes, unknowns, law } = device;
    const inner = law.terminals - 1;
    for (let row = 0; row < out.size; row++) {
      const terms = sizeOfTerms(device, row);
      if (row < inner) {
        throughput[nodes[row]] += roundingShare * terms;
        throughput[nodes[inner]] += roundingShare * terms;
      } else {
        const stored = Math.abs(x.rate * out.q[row]) + Math.abs(x.history[device.slot + row]);
        throughput[unknowns[row - inner]] += terms + Math.abs(out.f[row]) + stored;
      }
    }
  }
}

function sizeOfTerms({ out, held, x }: PlacedLaw, row: number): number {
  let sum = 0;
  for (let column = 0; column < out.size; column++)
    sum += Math.abs(held[row * out.size + column] * x[column]);
  return sum;
}
