import type { Binding } from "./bindings";
import type { OperatingPoint } from "./circuit";
import type { NewtonSystem } from "./kernel/newton-system";

import type { NodeName } from "./network";
import type { Numbering } from "./numbering";
import { readAmps } from "./read-amps";

/** Where the names of a circuit point to; made once and shared by all its operating points. */
export interface Directory {
  readonly numbering: Numbering;
  readonly bindings: readonly Binding[];
  /** Position in `bindings` by element id. */
  readonly position: ReadonlyMap<string, number>;
}

/** Copies volts and amps out of the solver. */
export function readOperatingPoint(
  system: NewtonSystem,
  directory: Directory,
  floating: readonly number[],
  iterations: number,
): OperatingPoint {
  const { x } = system;
  const { numbering, bindings, position } = directory;
  const volts = x.high.slice();
  const amps = readAmps(system.tables, x);
  let residualAmps = 0;
  for (let node = 0; node < numbering.nodeCount; node++) {
    residualAmps = Math.max(residualAmps, Math.abs(x.residual[node]));
  }
  return {
    volts: (node) => {
      const index = numbering.indexOf.get(node);
      if (index === undefined) throw new Error(`The network has no node "${node}".`);
      return volts[index];
    },
    amps: (id) => {
      const index = position.get(id);
      if (index === undefined) throw new Error(`The network has no element "${id}".`);
      return amps[bindings[index].ampsAt];
    },
    get floatingNodes() {
      return nameFloating(floating, numbering);
    },
    iterations,
    residualAmps,
  };
}

/** Hidden nodes have no name and are left out. */
function nameFloating(floating: readonly number[], numbering: Numbering): readonly NodeName[] {
  const found = new Set(floating);
  return numbering.names.filter((name) => found.has(numbering.indexOf.get(name) ?? -1));
}
