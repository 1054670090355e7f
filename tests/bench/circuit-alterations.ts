import { type Circuit, type Network, type OperatingPoint, prepareCircuit } from "@probeworthy/circuit";
import { randomNetwork } from "../reference/circuit/random-network";
import { seededNumbers } from "../reference/circuit/seeded-numbers";

/** One number of one element, changed for good. */
export interface Alteration {
  readonly element: string;
  readonly change: { readonly ohms: number } | { readonly volts: number };
}

/** 150 nodes, 30 diodes: the size of a vehicle system with its modules' clamps. */
export const op150 = harness(150);

/** Networks of the same make from 100 to thousands of nodes. */
export function harness(nodes: number, seed = 150): Network {
  return randomNetwork(seed, {
    nodes,
    diodes: Math.round(nodes / 5),
    switches: Math.max(1, Math.round(nodes / 15)),
  });
}

/**
 * What a fault search does to a network: one wire or contact after the other gets another resistance, half to twice the
 * one it was built with, and every tenth time it is the supply that moves.
 */
export function alterations(network: Network, count: number): readonly Alteration[] {
  const random = seededNumbers(1000);
  const resistors = network.elements.filter((element) => element.kind === "resistor");
  return Array.from({ length: count }, (_, turn) => {
    const resistor = resistors[random.integer(0, resistors.length - 1)];
    if (resistor === undefined) throw new Error("The network has no resistor.");
    const ohms = resistor.ohms * random.decades(0.5, 2);
    return turn % 10 === 9
      ? { element: "battery", change: { volts: random.between(11.4, 14.4) } }
      : { element: resistor.id, change: { ohms } };
  });
}

export function prepared(network: Network): Circuit {
  const circuit = prepareCircuit(network);
  if (!circuit.ok) throw new Error(circuit.error.message);
  return circuit.value;
}

/** Our own loop's body: change the number, solve; the answer is a view that can be read right away. */
export function alterAndSolve(circuit: Circuit, alteration: Alteration): OperatingPoint {
  const done = circuit.set(alteration.element, alteration.change);
  if (!done.ok) throw new Error(done.error.message);
  const point = circuit.solve();
  if (!point.ok) throw new Error(point.error.message);
  return point.value;
}

/** The network as it stands after these alterations. */
export function altered(network: Network, done: readonly Alteration[]): Network {
  const changes = new Map<string, object>();
  for (const { element, change } of done) changes.set(element, change);
  return {
    ...network,
    elements: network.elements.map((element) => ({ ...element, ...changes.get(element.id) })),
  };
}
