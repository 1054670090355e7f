import { circuitErrorBench } from "./circuit-errors";
import { circuitFlopsBench } from "./circuit-flops";
import { circuitGrowthBench } from "./circuit-growth";
import { circuitHeapBench } from "./circuit-heap";
import { circuitSpeedBench } from "./circuit-speed";
import { circuitTransientBench } from "./circuit-transient";
import type { Measurement } from "./measurement";

const benches: readonly (() => Promise<Measurement[]>)[] = [
  // First, before others have filled the heap.
  circuitHeapBench,
  circuitSpeedBench,
  circuitErrorBench,
  circuitGrowthBench,
  circuitTransientBench,
  circuitFlopsBench,
];

/** The circuit engine by itself and beside ngspice. */
export async function circuitBench(): Promise<Measurement[]> {
  const measured: Measurement[] = [];
  for (const bench of benches) measured.push(...(await bench()));
  return measured;
}
