import { alterAndSolve, alterations, harness, prepared } from "./circuit-alterations";
import { cpuSeconds, median } from "./cpu";
import type { Measurement } from "./measurement";

const sizes = [100, 200, 400, 800, 1600, 3200];
const turns = 9;

/** CPU time of an altered operating point over the size of the harness; all sizes take part in every turn. */
export async function circuitGrowthBench(): Promise<Measurement[]> {
  const runs = sizes.map((nodes) => {
    const network = harness(nodes);
    const circuit = prepared(network);
    const changes = alterations(network, Math.ceil(60_000 / nodes));
    return () => {
      for (const change of changes) alterAndSolve(circuit, change);
      return changes.length;
    };
  });
  for (const run of runs) run();
  const times: number[][] = sizes.map(() => []);
  for (let turn = 0; turn < turns; turn++)
    for (const [k, run] of runs.entries()) {
      let solved = 0;
      const seconds = cpuSeconds(() => {
        solved = run();
      });
      times[k]?.push(seconds / solved);
    }
  const medians = times.map(median);
  return [
    { name: "circuit.op3200.altered", value: (medians.at(-1) ?? Number.NaN) * 1e6, unit: "us" },
    { name: "circuit.growth_exponent", value: slope(sizes.map(Math.log), medians.map(Math.log)), unit: "1" },
  ];
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
