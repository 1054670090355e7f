import { op150, prepared } from "./circuit-alterations";
import type { Measurement } from "./measurement";
import { plainLoopSpeed } from "./plain-loop";

const turns = 400;

/**
 * How much of what the machine can do in a plain multiply–add loop a solve does in useful floating-point work. Every
 * resistance changes between two solves, as it does with the temperature of a whole harness, so that the whole matrix is
 * factorised anew; only the solves are timed. The counts are those of the algorithm, index arithmetic not among them.
 */
export async function circuitFlopsBench(): Promise<Measurement[]> {
  const circuit = prepared(op150);
  const resistors = op150.elements.filter((element) => element.kind === "resistor");
  const heat = (turn: number): void => {
    const factor = 1 + 0.004 * (turn % 50);
    for (const { id, ohms } of resistors) circuit.set(id, { ohms: ohms * factor });
  };
  const solve = (): void => {
    const point = circuit.solve();
    if (!point.ok) throw new Error(point.error.message);
  };
  const shares: number[] = [];
  const speeds: number[] = [];
  // In turns with the plain loop, so that a busy machine slows both alike; each keeps its best.
  for (let round = 0; round < 6; round++) {
    for (let turn = 0; turn < turns; turn++) {
      heat(turn);
      const before = circuit.operations;
      const start = performance.now();
      solve();
      const seconds = (performance.now() - start) / 1e3;
      speeds.push((circuit.operations - before) / seconds);
    }
    const best = quantile(speeds.splice(0), 0.9);
    if (round > 0) shares.push(best / plainLoopSpeed());
  }
  return [{ name: "circuit.flops_fraction", value: quantile(shares, 0.5), unit: "1" }];
}

function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(part * (sorted.length - 1))] ?? Number.NaN;
}
