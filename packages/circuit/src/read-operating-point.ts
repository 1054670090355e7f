import type { Binding } from "./bindings";
import type { OperatingPoint } from "./circuit";
import type { Islands } from "./connectivity";
import type { NewtonSystem } from "./kernel/newton-system";

import type { Numbering } from "./numbering";

export function readOperatingPoint(
  system: NewtonSystem,
  numbering: Numbering,
  bindings: ReadonlyMap<string, Binding>,
  islands: Islands,
  iterations: number,
): OperatingPoint {
  const { x } = system;
  const volts = x.high.slice();
  const amps = new Map<string, number>();
  for (const [id, binding] of bindings) amps.set(id, binding.amps(x));
  let residualAmps = 0;
  for (let node = 0; node < numbering.nodeCount; node++) {
    residualAmps = Math.max(residualAmps, Math.abs(x.residual[node]));
  }
  const floating = new Set(islands.floating);
  return {
    volts: (node) => {
      const index = numbering.indexOf.get(node);
      if (index === undefined) throw new Error(`The network has no node "${node}".`);
      return volts[index];
    },
    amps: (id) => {
      const value = amps.get(id);
      if (value === undefined) throw new Error(`The network has no element "${id}".`);
      return value;
    },
    floatingNodes: numbering.names.filter((name) => floating.has(numbering.indexOf.get(name) ?? -1)),
    iterations,
    residualAmps,
  };
}
