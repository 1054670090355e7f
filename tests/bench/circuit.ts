import { type Circuit, type CircuitElement, type Network, prepareCircuit } from "@probeworthy/circuit";
import { startNgspice } from "../reference/circuit/ngspice";
import { randomNetwork } from "../reference/circuit/random-network";
import type { Measurement } from "./measurement";

const seed = 150;

/** 150 nodes, 30 diodes: the size of a vehicle system with its modules' clamps. */
const op150 = randomNetwork(seed, { nodes: 150, diodes: 30, switches: 10 });

/**
 * Two operating-point solvers side by side, and how ours grows. The warm re-solve is what a learner's next reading
 * costs: one number changes, the topology does not. ngspice in WebAssembly has no such thing, it reads the deck
 * again; the cold time (prepare and solve) is given as well, so that both comparisons can be judged.
 */
export async function circuitBench(): Promise<Measurement[]> {
  const ngspice = await startNgspice();
  const reference = await ngspice.solve(op150);
  const circuit = prepared(op150);
  const errors = [...reference.volts].map(([node, volts]) => {
    const ours = solved(circuit).volts(node);
    return Math.abs(ours - volts) / Math.max(Math.abs(volts), 1e-3);
  });

  // In turns, so that a busy machine slows both alike.
  const turns = { theirs: [] as number[], warm: [] as number[], cold: [] as number[] };
  for (let turn = 0; turn < 20; turn++) {
    turns.theirs.push(await ngspice.time(op150));
    turns.warm.push(
      medianSeconds(150, (i) => {
        change(circuit, i);
        solved(circuit);
      }),
    );
    turns.cold.push(medianSeconds(2, () => solved(prepared(op150))));
  }
  const theirs = median(turns.theirs);
  const warm = median(turns.warm);
  const cold = median(turns.cold);

  const sizes = [100, 200, 400, 800, 1600, 3200];
  const times = sizes.map((nodes) => {
    const grown = prepared(randomNetwork(seed, { nodes, diodes: nodes / 5, switches: nodes / 20 }));
    solved(grown);
    return medianSeconds(Math.ceil(60_000 / nodes), (i) => {
      change(grown, i);
      solved(grown);
    });
  });
  return [
    { name: "circuit.op150.warm", value: warm * 1e6, unit: "us" },
    { name: "circuit.op150.cold", value: cold * 1e6, unit: "us" },
    { name: "circuit.op150.ngspice_wasm", value: theirs * 1e6, unit: "us" },
    { name: "circuit.op150.speedup_vs_ngspice_wasm", value: theirs / warm, unit: "x" },
    { name: "circuit.op150.cold_speedup_vs_ngspice_wasm", value: theirs / cold, unit: "x" },
    { name: "circuit.op150.max_relative_error", value: Math.max(...errors), unit: "1" },
    { name: "circuit.op3200.warm", value: (times.at(-1) ?? Number.NaN) * 1e6, unit: "us" },
    { name: "circuit.growth_exponent", value: slope(sizes.map(Math.log), times.map(Math.log)), unit: "1" },
  ];
}

function prepared(network: Network): Circuit {
  const circuit = prepareCircuit(network);
  if (!circuit.ok) throw new Error(circuit.error.message);
  return circuit.value;
}

function solved(circuit: Circuit) {
  const point = circuit.operatingPoint();
  if (!point.ok) throw new Error(point.error.message);
  return point.value;
}

const supplies = [12.6, 12.1, 13.8, 14.2, 11.4];

/** Another supply voltage at every turn: moves every node and every diode. */
function change(circuit: Circuit, turn: number): void {
  const volts = supplies[turn % supplies.length] ?? 12.6;
  const done = circuit.set("battery", { volts } satisfies Partial<CircuitElement>);
  if (!done.ok) throw new Error(done.error.message);
}

/** Median seconds of one call, after a warm-up of half as many. */
function medianSeconds(turns: number, run: (turn: number) => void): number {
  for (let i = 0; i < turns / 2; i++) run(i);
  const times: number[] = [];
  for (let i = 0; i < turns; i++) {
    const start = performance.now();
    run(i);
    times.push(performance.now() - start);
  }
  return median(times) / 1e3;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** Least-squares slope of y over x. */
function slope(x: readonly number[], y: readonly number[]): number {
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  let over = 0;
  let under = 0;
  x.forEach((value, i) => {
    over += (value - mx) * ((y[i] ?? Number.NaN) - my);
    under += (value - mx) ** 2;
  });
  return over / under;
}
