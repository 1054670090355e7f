import { type Network, operatingPoint } from "@probeworthy/circuit";
import { startNgspice } from "../reference/circuit/ngspice";
import { randomNetwork } from "../reference/circuit/random-network";
import { op150 } from "./circuit-alterations";
import type { Measurement } from "./measurement";

/** Below these a difference is taken relative to them: a millivolt, a milliampere. */
const floors = { volts: 1e-3, amps: 1e-3 };

const networks: readonly Network[] = [
  op150,
  ...Array.from({ length: 40 }, (_, i) => {
    const nodes = 10 + 5 * i;
    return randomNetwork(7000 + i, {
      nodes,
      diodes: Math.ceil(nodes / 5),
      switches: Math.ceil(nodes / 10),
      filaments: Math.ceil(nodes / 20),
      currentSources: 2,
      controlledSources: 4,
    });
  }),
];

/** Every voltage and every current that ngspice reports, over networks of 10 to 205 nodes; the worst of all. */
export async function circuitErrorBench(): Promise<Measurement[]> {
  const ngspice = await startNgspice();
  let worst = 0;
  for (const network of networks) {
    const point = operatingPoint(network);
    if (!point.ok) throw new Error(point.error.message);
    const ours = point.value;
    const theirs = await ngspice.solve(network, { leaks: ours.floatingNodes, guess: ours.volts });
    for (const [node, volts] of theirs.volts)
      worst = Math.max(worst, Math.abs(ours.volts(node) - volts) / Math.max(Math.abs(volts), floors.volts));
    for (const [id, amps] of theirs.amps)
      worst = Math.max(worst, Math.abs(ours.amps(id) - amps) / Math.max(Math.abs(amps), floors.amps));
  }
  return [
    { name: "circuit.op150.compared_networks", value: networks.length, unit: "1" },
    { name: "circuit.op150.max_relative_error", value: worst, unit: "1" },
  ];
}
