import type { CircuitElement, Network } from "@probeworthy/circuit";
import { draws, type RandomDevice } from "./random-devices";
import type { Draw } from "./random-draw";
import { type SeededNumbers, seededNumbers } from "./seeded-numbers";

/** How many nodes the harness has, and how many of each device hang in it; a device may bring a node of its own. */
export type RandomNetworkShape = { readonly nodes: number } & { readonly [Device in RandomDevice]?: number };

/**
 * A network with the proportions of a harness: every node hangs on an earlier one by a resistance (wires from 10
 * milliohms, contacts, pull-ups), loads and a few megohms go from there to the chassis, some more resistances close
 * meshes, one battery with an internal resistance feeds the whole, and the devices asked for are sprinkled between neighbours.
 */
export function randomNetwork(seed: number, shape: RandomNetworkShape): Network {
  const random = seededNumbers(seed);
  const node = (i: number) => (i === 0 ? "chassis" : `n${i}`);
  const elements: CircuitElement[] = [
    { kind: "voltageSource", id: "battery", positive: "n1", negative: "chassis", volts: 12.6, ohms: 0.01 },
  ];
  for (let i = 2; i < shape.nodes; i++) {
    const near = random.integer(Math.max(1, i - 8), i - 1);
    elements.push({ kind: "resistor", id: `tree${i}`, a: node(near), b: node(i), ohms: resistance(random) });
    if (random.chance(0.4)) {
      const [a, b] = [node(i), node(random.integer(Math.max(0, i - 12), i - 1))];
      elements.push({ kind: "resistor", id: `mesh${i}`, a, b, ohms: random.decades(10, 1e5) });
    }
    if (random.chance(0.1)) {
      elements.push({
        kind: "resistor",
        id: `meter${i}`,
        a: node(i),
        b: "chassis",
        ohms: random.between(1e7, 3e7),
      });
    }
  }
  const draw: Draw = {
    random,
    elements,
    ground: "chassis",
    pair: () => {
      const a = random.integer(1, shape.nodes - 1);
      const b = random.chance(0.3) ? 0 : random.integer(Math.max(0, a - 12), a - 1);
      return random.chance(0.5) ? [node(a), node(b)] : [node(b), node(a)];
    },
    nearSupply: () => node(random.integer(1, Math.min(4, shape.nodes - 1))),
  };
  for (const device of Object.keys(draws) as RandomDevice[])
    for (let i = 0; i < (shape[device] ?? 0); i++) elements.push(...draws[device](i, draw));
  return { ground: "chassis", elements };
}

function resistance(random: SeededNumbers): number {
  if (random.chance(0.5)) return random.decades(1e-2, 1);
  return random.chance(0.5) ? random.decades(1, 100) : random.decades(100, 1e5);
}
