import type { CircuitElement, Network } from "@probeworthy/circuit";
import { type SeededNumbers, seededNumbers } from "./seeded-numbers";

export interface RandomNetworkShape {
  readonly nodes: number;
  readonly diodes?: number;
  readonly switches?: number;
  readonly filaments?: number;
  readonly regulators?: number;
  readonly currentSources?: number;
}

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
  /** Two neighbours in the harness, or a node and the chassis. */
  const pair = (): [string, string] => {
    const a = random.integer(1, shape.nodes - 1);
    const b = random.chance(0.3) ? 0 : random.integer(Math.max(0, a - 12), a - 1);
    return random.chance(0.5) ? [node(a), node(b)] : [node(b), node(a)];
  };
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
  const repeat = (count: number | undefined, make: (i: number) => CircuitElement) => {
    for (let i = 0; i < (count ?? 0); i++) elements.push(make(i));
  };
  repeat(shape.diodes, (i) => diode(`diode${i}`, pair(), random));
  repeat(shape.switches, (i) => {
    const [a, b] = pair();
    return { kind: "switch", id: `switch${i}`, a, b, closed: random.chance(0.5), closedOhms: 0.02 };
  });
  repeat(shape.filaments, (i) => {
    const [a, b] = pair();
    return { kind: "filament", id: `lamp${i}`, a, b, ratedVolts: 12, ratedWatts: random.between(2, 55) };
  });
  repeat(shape.currentSources, (i) => {
    const [from, to] = pair();
    return { kind: "currentSource", id: `amps${i}`, from, to, amps: random.decades(1e-6, 1e-2) };
  });
  repeat(shape.regulators, (i) => {
    const [input, output] = [node(random.integer(1, Math.min(4, shape.nodes - 1))), `rail${i}`];
    const rail = {
      volts: random.chance(0.5) ? 5 : 8,
      limitAmps: random.decades(0.02, 1),
      quiescentAmps: 3e-3,
    };
    elements.push({
      kind: "resistor",
      id: `railLoad${i}`,
      a: output,
      b: "chassis",
      ohms: random.decades(10, 1e5),
    });
    const outputOhms = random.decades(0.01, 1);
    return {
      kind: "regulator",
      id: `regulator${i}`,
      input,
      output,
      reference: "chassis",
      ...rail,
      outputOhms,
    };
  });
  return { ground: "chassis", elements };
}

function resistance(random: SeededNumbers): number {
  if (random.chance(0.5)) return random.decades(1e-2, 1);
  return random.chance(0.5) ? random.decades(1, 100) : random.decades(100, 1e5);
}

function diode(id: string, [anode, cathode]: [string, string], random: SeededNumbers): CircuitElement {
  const law = {
    saturationAmps: random.decades(1e-15, 1e-10),
    emission: random.between(1, 2),
    celsius: random.between(-20, 80),
  };
  const zener = random.chance(0.2) ? { breakdownVolts: random.between(3, 30) } : {};
  const series = random.chance(0.5) ? { seriesOhms: random.decades(0.01, 10) } : {};
  return { kind: "diode", id, anode, cathode, ...law, ...zener, ...series };
}
