import type { NewtonSystem } from "../kernel/newton-system";

/**
 * Adds the time derivatives `rates`, by slot, to the rows of the equations in which they stand, with the factors they
 * have there. What is written to `rows` is what the residual would change by.
 */
export function scatterRates(system: NewtonSystem, rates: Float64Array, rows: Float64Array): void {
  const { capacitor, branch, law } = system.tables;
  for (let i = 0; i < capacitor.count; i++) {
    const rate = rates[capacitor.slot + i];
    rows[capacitor.a[i]] += rate;
    rows[capacitor.b[i]] -= rate;
  }
  for (let i = 0; i < branch.count; i++) {
    if (branch.henries[i] === 0) continue;
    const weight = 1 / Math.max(1, branch.ohms[i] + system.x.rate * branch.henries[i]);
    rows[branch.unknown[i]] -= weight * rates[branch.slot + i];
  }
  for (const { slot, nodes, unknowns } of law.devices) {
    const inner = nodes.length - 1;
    for (let k = 0; k < inner; k++) {
      rows[nodes[k]] += rates[slot + k];
      rows[nodes[inner]] -= rates[slot + k];
    }
    for (let k = 0; k < unknowns.length; k++) rows[unknowns[k]] += rates[slot + inner + k];
  }
}

/** Unknowns in which something is stored, as differences of two rows: volts of a capacitor, amps of an inductor … */
export interface StoredUnknowns {
  readonly plus: Int32Array;
  /** The row beyond the last, whose value is 0, where there is no difference. */
  readonly minus: Int32Array;
  /** Error allowed apart from the relative one, by unknown. */
  readonly floor: Float64Array;
}

/**
 * Only these are held to a tolerance. What follows from them without delay is as exact as they are, and need not be
 * smooth: the voltage at a coil whose diode has just ceased to conduct.
 */
export function listStored(
  { tables, pattern }: NewtonSystem,
  floor: Float64Array,
  volts: number,
): StoredUnknowns {
  const ground = pattern.size;
  const list: [plus: number, minus: number, floor: number][] = [];
  const { capacitor, branch, law } = tables;
  for (let i = 0; i < capacitor.count; i++) list.push([capacitor.a[i], capacitor.b[i], volts]);
  for (let i = 0; i < branch.count; i++) {
    const row = branch.unknown[i];
    if (branch.henries[i] !== 0) list.push([row, ground, floor[row]]);
  }
  for (const { unknowns } of law.devices) for (const row of unknowns) list.push([row, ground, floor[row]]);
  return {
    plus: Int32Array.from(list, ([plus]) => plus),
    minus: Int32Array.from(list, ([, minus]) => minus),
    floor: Float64Array.from(list, ([, , least]) => least),
  };
}

/** The stored unknown that `shift` moves farthest beyond what is allowed; answers its place in the list. */
export function worstStored(
  { plus, minus, floor }: StoredUnknowns,
  shift: Float64Array,
  before: Float64Array,
  after: Float64Array,
  relative: number,
  most: { part: number },
): number {
  let worst = 0;
  most.part = 0;
  for (let i = 0; i < plus.length; i++) {
    const a = plus[i];
    const b = minus[i];
    const size = Math.max(Math.abs(before[a] - before[b]), Math.abs(after[a] - after[b]));
    const part = Math.abs(shift[a] - shift[b]) / (relative * size + floor[i]);
    if (part > most.part) {
      most.part = part;
      worst = a;
    }
  }
  return worst;
}

/** By how much each slot's charge moves when the unknowns move by `shift`; laws as at their last evaluation. */
export function gatherCharges(system: NewtonSystem, shift: Float64Array, charges: Float64Array): void {
  const { capacitor, branch, law } = system.tables;
  for (let i = 0; i < capacitor.count; i++)
    charges[capacitor.slot + i] = capacitor.farads[i] * (shift[capacitor.a[i]] - shift[capacitor.b[i]]);
  for (let i = 0; i < branch.count; i++)
    charges[branch.slot + i] = branch.henries[i] * shift[branch.unknown[i]];
  for (const { slot, nodes, unknowns, out } of law.devices) {
    const inner = nodes.length - 1;
    for (let row = 0; row < out.size; row++) {
      let sum = 0;
      for (let k = 0; k < inner; k++)
        sum += out.dq[row * out.size + k] * (shift[nodes[k]] - shift[nodes[inner]]);
      for (let k = 0; k < unknowns.length; k++)
        sum += out.dq[row * out.size + inner + k] * shift[unknowns[k]];
      charges[slot + row] = sum;
    }
  }
}
