import { circuitErrorBench } from "./circuit-errors";
import { circuitGrowthBench } from "./circuit-growth";
import { circuitHeapBench } from "./circuit-heap";
import { circuitSpeedBench } from "./circuit-speed";
import type { Measurement } from "./measurement";

/** The circuit engine by itself and beside ngspice; the heap first, before other benches have filled it. */
export async function circuitBench(): Promise<Measurement[]> {
  const benches = [circuitHeapBench, circuitSpeedBench, circuitErrorBench, circuitGrowthBench];
  const measured: Measurement[] = [];
  for (const bench of benches) measured.push(...(await bench()));
  return measured;
}
