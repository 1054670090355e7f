import { type CircuitElement, type Network, operatingPoint } from "@probeworthy/circuit";
import { beforeAll, describe, expect, it } from "vitest";
import { handNetworks } from "./hand-networks";
import { type Ngspice, startNgspice } from "./ngspice";
import { randomNetwork } from "./random-network";

// The outside check of the solver: ngspice 45 (package eecircuit-engine) on the same networks, to 1e-6 relative or
// 1 nV and 1 pA. Change the seed to try others; it stands in the name of every random case.
const seed = 20_260;
/** Many small ones, where every element tells, and some as large as a whole vehicle's harness. */
const sizes = [
  ...Array.from({ length: 160 }, (_, i) => 5 + (i % 32)),
  ...Array.from({ length: 30 }, (_, i) => 40 + 3 * i),
  ...Array.from({ length: 7 }, (_, i) => 140 + 20 * i),
  ...[320, 360, 400],
];

let ngspice: Ngspice;
beforeAll(async () => {
  ngspice = await startNgspice();
});

/**
 * ngspice takes the current of a part of few ohms from two node voltages, of which it knows 1e-11 V at these tolerances:
 * a nanoampere in ten milliohms. Ours keeps more digits, so the allowance is for ngspice.
 */
const resolution = (element: CircuitElement) => 1e-11 / ohmsOf(element);

function ohmsOf(element: CircuitElement): number {
  switch (element.kind) {
    case "resistor":
      return element.ohms;
    case "diode":
      return element.seriesOhms ?? Number.POSITIVE_INFINITY;
    case "filament":
      return ((element.coldRatio ?? 1 / 15) * element.ratedVolts ** 2) / element.ratedWatts;
    case "fuse":
      return element.coldOhms ?? Number.POSITIVE_INFINITY;
    default:
      return Number.POSITIVE_INFINITY;
  }
}

async function compare(network: Network) {
  const result = operatingPoint(network);
  if (!result.ok) throw new Error(result.error.message);
  const point = result.value;
  const theirs = await ngspice.solve(network, { leaks: point.floatingNodes, guess: point.volts });
  const wrong: string[] = [];
  for (const [node, volts] of theirs.volts) {
    const allowed = Math.max(1e-9, 1e-6 * Math.abs(volts));
    if (!(Math.abs(point.volts(node) - volts) <= allowed)) {
      wrong.push(`v(${node}): ${point.volts(node)} against ${volts}`);
    }
  }
  for (const element of network.elements) {
    const amps = theirs.amps.get(element.id);
    if (amps === undefined) continue;
    const allowed = Math.max(1e-12, 1e-6 * Math.abs(amps)) + resolution(element);
    if (!(Math.abs(point.amps(element.id) - amps) <= allowed)) {
      wrong.push(`i(${element.id}): ${point.amps(element.id)} against ${amps}`);
    }
  }
  expect(theirs.volts.size).toBeGreaterThan(1);
  expect(wrong).toEqual([]);
}

describe("hand-written networks agree with ngspice", () => {
  it.each(handNetworks)("%s", async (_name, network) => compare(network));
});

describe("random networks agree with ngspice", () => {
  it.each(sizes.map((nodes, i) => [seed + i, nodes]))("seed %d, %d nodes", async (key = 0, nodes = 0) =>
    compare(
      randomNetwork(key, {
        nodes,
        diodes: Math.ceil(nodes / 5),
        switches: Math.ceil(nodes / 10),
        filaments: Math.ceil(nodes / 12),
        regulators: key % 4 === 0 ? 1 : 0,
        currentSources: 2,
        controlledSources: key % 5,
      }),
    ),
  );
});

describe("random networks of every kind of element agree with ngspice", () => {
  const cases = Array.from({ length: 60 }, (_, i) => [seed + 10_000 + i, 10 + 2 * (i % 30)] as const);
  it.each(cases)("seed %d, %d nodes", async (key, nodes) => {
    const some = (part: number) => Math.ceil(nodes / part);
    await compare(
      randomNetwork(key, {
        nodes,
        diodes: some(10),
        switches: some(15),
        filaments: some(20),
        controlledSources: key % 3,
        hotWires: 2,
        capacitors: 2,
        inductors: 1,
        leds: some(20),
        zeners: key % 3,
        curves: key % 2,
        thermistors: 3,
        fuses: some(20),
        motors: key % 2,
        batteries: key % 4 === 0 ? 1 : 0,
        alternators: key % 5 === 0 ? 1 : 0,
        relays: some(30),
        comparators: some(40),
        drivers: some(20),
      }),
    );
  });
});
