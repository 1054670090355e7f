// `npm test`: every check there is, from a fresh clone. A failing step does not hide the others. The last line is
// exactly "N passed, N failed".

import { parseTestArguments } from "./arguments.mjs";
import { stopChildren } from "./run-command.mjs";
import { checkNode, generateClient, installPackages } from "./set-up.mjs";
import { reportFailure, StepError, say } from "./steps.mjs";
import { runners } from "./test-steps.mjs";

/** @typedef {import("./test-reports.mjs").Counts} Counts */

/** @param {() => Promise<Counts>} run */
async function outcome(run) {
  try {
    return await run();
  } catch (error) {
    reportFailure(error);
    return { passed: 0, failed: 1 };
  }
}

async function testAll() {
  const parsed = parseTestArguments(process.argv.slice(2));
  if (!parsed.ok) throw new StepError(parsed.error);
  checkNode();
  await installPackages();
  await generateClient();

  /** @type {{ name: string, counts: Counts, seconds: number }[]} */
  const results = [];
  for (const name of parsed.value) {
    say(`── ${name} ──`);
    const start = Date.now();
    const counts = await outcome(runners[name]);
    results.push({ name, counts, seconds: (Date.now() - start) / 1000 });
  }

  process.stdout.write("\n");
  for (const { name, counts, seconds } of results) {
    const took = `${seconds.toFixed(1)} s`.padStart(8);
    process.stdout.write(`${name.padEnd(12)} ${took}  ${counts.passed} passed, ${counts.failed} failed\n`);
  }
  return results.reduce(
    (sum, { counts }) => ({ passed: sum.passed + counts.passed, failed: sum.failed + counts.failed }),
    { passed: 0, failed: 0 },
  );
}

for (const signal of /** @type {const} */ (["SIGINT", "SIGTERM"])) {
  process.once(signal, () => {
    void stopChildren().then(() => process.exit(130));
  });
}

const { passed, failed } = await outcome(testAll);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
process.stdout.write(`${passed} passed, ${failed} failed\n`);
