import { PerformanceObserver } from "node:perf_hooks";
import { setImmediate } from "node:timers/promises";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { alterAndSolve, alterations, op150, prepared } from "./circuit-alterations";
import { median } from "./cpu";
import type { Measurement } from "./measurement";

/** Enough that a page of the allocator does not matter, few enough that nothing is collected meanwhile. */
const solvesOfOneRound = 4000;
const rounds = 7;

/**
 * What one change and one solve leave on the heap, garbage included: bytes in use after thousands of solves, less bytes
 * in use before, between two points with no collection in between. Rounds in which the engine collected all the same
 * are thrown away. Buffers of typed arrays are counted too.
 */
export async function circuitHeapBench(): Promise<Measurement[]> {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  const circuit = prepared(op150);
  // The changes are made beforehand: what is counted is ours.
  const changes = alterations(op150, solvesOfOneRound);
  const round = () => {
    for (const change of changes) alterAndSolve(circuit, change);
  };
  // Until the compiler has done its work: before, it keeps numbers on the heap.
  for (let i = 0; i < 12; i++) round();

  const perSolve: number[] = [];
  let attempts = 0;
  while (perSolve.length < rounds) {
    if (attempts++ > 10 * rounds)
      throw new Error("The heap was collected in every round: too much is allocated.");
    collect();
    await setImmediate();
    const watch = watchCollections();
    const before = used();
    round();
    const bytes = used() - before;
    if ((await watch.end()) === 0) perSolve.push(bytes / solvesOfOneRound);
  }
  return [{ name: "circuit.heap_bytes_per_solve", value: median(perSolve), unit: "B" }];
}

function used(): number {
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}

function watchCollections() {
  let seen = 0;
  const observer = new PerformanceObserver((list) => {
    seen += list.getEntries().length;
  });
  observer.observe({ entryTypes: ["gc"] });
  return {
    /** Number of collections since. They are told a turn of the event loop later. */
    async end(): Promise<number> {
      await setImmediate();
      await setImmediate();
      observer.disconnect();
      return seen;
    },
  };
}
