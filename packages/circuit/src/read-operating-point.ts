import type { Binding } from "./bindings";
import type { Islands } from "./connectivity";
import type { NewtonSystem } from "./kernel/newton-system";
import type { NodeName } from "./network";
import type { Numbering } from "./numbering";

/** A solved network, frozen. */
export interface OperatingPoint {
  /** Volts of a node above ground. Throws for a name the network does not have. */
  volts(node: NodeName): number;
  /**
   * Amps through an element, counted into its first-named terminal (a, positive, anode, from): a discharging
   * source reads negative. For a regulator the amps out of its output. Throws for an unknown id.
   */
  amps(elementId: string): number;
  /** Nodes that no element ties to ground (open switches and 1e12 Ω do not count); a 1e-12 S leak holds each. */
  readonly floatingNodes: readonly NodeName[];
  /** Newton iterations spent, all attempts together. */
  readonly iterations: number;
  /** Largest |sum of currents| at any node. */
  readonly residualAmps: number;
}

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
