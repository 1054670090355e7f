import type { LawOutput } from "../devices/law";
import type { PlacedLaw } from "../devices/law-table";
import type { NewtonSystem } from "../kernel/newton-system";

/** The charges that a steady state has to bring back to where they were, one place each. */
export interface FreeCharges {
  readonly slots: Int32Array;
  /** Row to name when one does not come back. */
  readonly rows: Int32Array;
  /** Error allowed apart from the relative one. */
  readonly floor: Float64Array;
}

/**
 * Capacitors, inductors, and of each law what an operating point solves for as well. What that holds (a charge that
 * takes hours, the melting of a fuse) is held here too.
 */
export function listFreeCharges(
  system: NewtonSystem,
  volts: number,
  amps: number,
  internal: number,
): FreeCharges {
  const { capacitor, branch, law } = system.tables;
  const list: [slot: number, row: number, floor: number][] = [];
  for (let i = 0; i < capacitor.count; i++) {
    const row = capacitor.a[i] === system.pattern.size ? capacitor.b[i] : capacitor.a[i];
    list.push([capacitor.slot + i, row, capacitor.farads[i] * volts]);
  }
  for (let i = 0; i < branch.count; i++) {
    if (branch.henries[i] !== 0) list.push([branch.slot + i, branch.unknown[i], branch.henries[i] * amps]);
  }
  for (const device of law.devices) {
    const inner = device.nodes.length - 1;
    const dq = probe(device, false).dq.slice();
    const df = probe(device, true).df;
    const { size } = device.out;
    for (let row = 0; row < size; row++) {
      const stores = dq.subarray(row * size, (row + 1) * size).some((value) => value !== 0);
      if (!stores || isHeld(df, row, size)) continue;
      let floor = 0;
      for (let k = 0; k < size; k++) {
        const unit = k < inner ? volts : internal * device.law.internals[k - inner].tolerance;
        floor += Math.abs(dq[row * size + k]) * unit;
      }
      list.push([device.slot + row, row < inner ? device.nodes[row] : device.unknowns[row - inner], floor]);
    }
  }
  return {
    slots: Int32Array.from(list, ([slot]) => slot),
    rows: Int32Array.from(list, ([, row]) => row),
    floor: Float64Array.from(list, ([, , floor]) => floor),
  };
}

/** At rest the equation says no more than that its unknown stays where it is. */
function isHeld(df: Float64Array, row: number, size: number): boolean {
  for (let k = 0; k < size; k++) if (k !== row && df[row * size + k] !== 0) return false;
  return true;
}

/** The law a little beside where it stands, so that no slope is zero by chance. */
function probe({ law, parameters, x, out }: PlacedLaw, isStatic: boolean): LawOutput {
  const beside = x.map((value, k) => value + 1e-3 * (1 + Math.abs(value)) * (k + 1));
  out.f.fill(0);
  out.q.fill(0);
  out.df.fill(0);
  out.dq.fill(0);
  out.isStatic = isStatic;
  law.evaluate(parameters, beside, out);
  return out;
}
