/**
 * Grades a log without any web: loads a vehicle, a scenario, a variant and a log, replays it and prints the grade with
 * its reasons.
 *
 *   npx tsx packages/evaluation/examples/replay-log.ts                          the log that lies beside this file
 *   npx tsx packages/evaluation/examples/replay-log.ts my-log.json              a log of your own
 *   npx tsx packages/evaluation/examples/replay-log.ts my-log.json vehicle.json … worked on another vehicle
 *
 * A log file holds `{ scenario, variant, events }`: the scenario document, the variant that was drawn, the lines.
 */
import { readFileSync } from "node:fs";
import { parseVehicle } from "@probeworthy/vehicle";
import { scenarioSchema } from "../src/index";
import { checkLog, grade, replay, variantSchema } from "../src/server";

const beside = new URL("heavy-all-at-once.log.json", import.meta.url).pathname;
const [logFile = beside, vehicleFile] = process.argv.slice(2);
const stored = JSON.parse(readFileSync(logFile, "utf8")) as Record<string, unknown>;
const vehicle = parseVehicle(vehicleFile === undefined ? await trainingVehicle() : read(vehicleFile));
if (!vehicle.ok) stop("the vehicle cannot be used", vehicle.error);
const context = {
  scenario: scenarioSchema.parse(stored.scenario),
  variant: variantSchema.parse(stored.variant),
  document: vehicle.value,
};

const log = checkLog(Array.isArray(stored.events) ? stored.events : []);
if (!log.ok) stop("the log is damaged", log.error);
const { elapsedSeconds, actions } = replay(log.value);
console.log(
  `${context.scenario.title}: ${log.value.length} lines, ${actions} actions, ${elapsedSeconds} s of shop time`,
);
for (const { sequence, command, observation } of log.value) {
  console.log(`${String(sequence).padStart(3)}  ${command.type.padEnd(16)} ${shown(observation)}`);
}

const result = grade(context, log.value);
if (!result.ok) stop("the log cannot be graded", result.error);
const { score, passMark, passed, lines, evidence, truth } = result.value;
console.log(`\nScore ${score} of 100, pass mark ${passMark}: ${passed ? "passed" : "not passed"}`);
for (const line of lines) {
  console.log(`\n${line.title}: ${line.points} of ${line.maximum}`);
  for (const { text, effect, lines: cited } of line.reasons) {
    const where = cited.length === 0 ? "" : ` (lines ${cited.join(", ")})`;
    console.log(`  ${effect >= 0 ? "+" : ""}${effect.toFixed(2)}  ${text}${where}`);
  }
}
console.log("\nCauses the readings left standing:");
for (const { line, standing, ruledOut } of evidence.steps) {
  if (ruledOut.length > 0)
    console.log(`  line ${line}: ${standing.length} stand, ${ruledOut.length} ruled out`);
}
console.log(`\nIt was: ${truth.map(({ title, correction }) => `${title}. ${correction}.`).join(" ")}`);

type Observation = (typeof log.value)[number]["observation"];

function shown(observation: Observation): string {
  switch (observation.kind) {
    case "reading":
      return `${observation.red} against ${observation.black}: ${observation.reading.display} ${observation.reading.unit}`;
    case "codes":
      return observation.codes.map(({ code }) => code).join(", ") || observation.message;
    case "fuse":
      return `${observation.fuse} ${observation.element}, holder ${observation.holder}`;
    case "noticed":
      return observation.items.map(({ text }) => text).join("; ");
    case "bench":
      return observation.message;
    default:
      return "";
  }
}

function stop(what: string, error: unknown): never {
  console.error(`${what}: ${JSON.stringify(error, null, 2)}`);
  process.exit(1);
}

function read(file: string): unknown {
  return JSON.parse(readFileSync(file, "utf8"));
}

/** By path, not by name: the training vehicle depends on this package, so this package cannot depend on it. */
async function trainingVehicle(): Promise<unknown> {
  return (await import("../../training-vehicle/src/index")).trainingVehicle;
}
