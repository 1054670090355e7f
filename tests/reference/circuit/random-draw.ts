import type { CircuitElement, NodeName, Resistor } from "@probeworthy/circuit";
import type { SeededNumbers } from "./seeded-numbers";

/** What a device is drawn from. */
export interface Draw {
  readonly random: SeededNumbers;
  /** What the network has so far. */
  readonly elements: readonly CircuitElement[];
  readonly ground: NodeName;
  /** Two neighbours in the harness, or a node and the chassis. */
  pair(): [NodeName, NodeName];
  /** A node a few wires from the battery. */
  nearSupply(): NodeName;
}

export type DrawDevice = (i: number, draw: Draw) => readonly CircuitElement[];

export const resistor = (id: string, a: NodeName, b: NodeName, ohms: number): Resistor => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});
