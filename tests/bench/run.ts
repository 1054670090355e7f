import { circuitBench } from "./circuit";
import { diagramBench } from "./diagram";
import { evidenceBench } from "./evidence";
import type { Measurement } from "./measurement";
import { strategyBench } from "./strategy";
import { vehicleBench } from "./vehicle";

/** Every bench of the repository; each measures by itself. The strategy solves hundreds of cars and takes minutes. */
const benches: readonly (() => Promise<Measurement[]>)[] = [
  circuitBench,
  vehicleBench,
  diagramBench,
  evidenceBench,
  strategyBench,
];

const measured: Measurement[] = [];
for (const bench of benches) measured.push(...(await bench()));

const say = (line: string) => process.stdout.write(`${line}\n`);
if (process.argv.includes("--json")) {
  for (const { name, value, unit } of measured) say(JSON.stringify({ name, value, unit }));
} else {
  const rows = measured.map(({ name, value, unit }) => [name, value.toPrecision(4), unit] as const);
  const width = (column: 0 | 1) => Math.max(...rows.map((row) => row[column].length));
  const [names, values] = [width(0), width(1)];
  for (const [name, value, unit] of rows) say(`${name.padEnd(names)}  ${value.padStart(values)}  ${unit}`);
}
