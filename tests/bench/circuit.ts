import { circuitErrorBench } from "./circuit-errors";
import { circuitGrowthBench } from "./circuit-growth";
import { circuitHeapBench } from "./circuit-heap";
import { circuitSpeedBench } from "./circuit-speed";
import { circuitTransientBench } from "./circuit-transient";
import type { Measurement } from "./measurement";
import { plainLoopSpeed } from "./plain-loop";

const benches: readonly (() => Promise<Measurement[]>)[] = [
  // First, before others have filled the heap.
  circuitHeapBench,
  circuitSpeedBench,
  circuitErrorBench,
  circuitGrowthBench,
  circuitTransientBench,
  // What this machine's JavaScript does at best: the measure for a count of useful operations.
  async () => [{ name: "circuit.plain_loop_flops", value: plainLoopSpeed(), unit: "1/s" }],
];

/** The circuit engine by itself and beside ngspice. */
export async function circuitBench(): Promise<Measurement[]> {
  const measured: Measurement[] = [];
  for (const bench of benches) measured.push(...(await bench()));
  return measured;
}
