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
 * ngspice takes a resistor's current from two rounded node voltages: some ulp of 16 V over its ohms is all the
 * resolution it has (12 pA in a milliohm). Ours keeps more digits, so the allowance is for ngspice.
 */
const resolution = (element: CircuitElement) => {
  const ohms = element.kind === "resistor" || element.kind === "diode" ? ohmsOf(element) : undefined;
  return ohms === undefined ? 0 : (4 * Number.EPSILON * 16) / ohms;
};
const ohmsOf = (element: CircuitElement) =>
  element.kind === "resistor" ? element.ohms : element.kind === "diode" ? element.seriesOhms : undefined;

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
        regulators: key % 3,
        currentSources: 2,
        controlledSources: key % 5,
      }),
    ),
  );
});
