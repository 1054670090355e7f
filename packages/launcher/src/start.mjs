// `npm start`: from a fresh clone to a running Probeworthy.

import { parseStartArguments, startUsage } from "./arguments.mjs";
import { prepareDatabase } from "./database-command.mjs";
import { stopChildren } from "./run-command.mjs";
import { choosePort, serve } from "./serve.mjs";
import { setUp } from "./set-up.mjs";
import { reportFailure, StepError, say, step } from "./steps.mjs";

/** @typedef {import("./database-command.mjs").Prepared["signIns"]} SignIns */

let isStopping = false;

async function start() {
  // npm changes to the repository's folder; relative paths mean the folder the person is in.
  const parsed = parseStartArguments(process.argv.slice(2), process.env.INIT_CWD ?? process.cwd());
  if (!parsed.ok) throw new StepError(parsed.error, { advice: startUsage });
  if (parsed.value === "help") {
    process.stdout.write(`${startUsage}\n`);
    return;
  }
  const { host, data, demo } = parsed.value;
  const port = await choosePort(parsed.value.port, host);
  await setUp();
  const { kind, signIns } = await prepareDatabase({ data, demo });
  const server = await step("Starting the web server", () =>
    serve({ port, host, data, demo: signIns.length > 0 }),
  );
  if (isStopping) return;
  say(`Probeworthy is ready: ${server.address}`);
  say(kind === "embedded" ? `Data folder: ${data}` : "Data: the PostgreSQL server named in DATABASE_URL");
  printSignIns(signIns, isLoopback(host));
  process.stdout.write("\nStop it with Ctrl-C.\n");
  const code = await server.ended;
  if (!isStopping) throw new StepError(`The web server ended unexpectedly with code ${code}.`);
}

/** @param {string} host */
const isLoopback = (host) => host === "localhost" || host === "::1" || host.startsWith("127.");

/**
 * @param {SignIns} signIns
 * @param {boolean} onlyThisComputer
 */
function printSignIns(signIns, onlyThisComputer) {
  if (signIns.length === 0) return;
  const width = Math.max(...signIns.map(({ email }) => email.length));
  const lines = signIns.map(
    ({ role, email, password }) => `  ${role.padEnd(14)} ${email.padEnd(width)}  ${password}`,
  );
  process.stdout.write(`\nDemo sign-ins (invented people; the passwords are public):\n${lines.join("\n")}\n`);
  if (onlyThisComputer) return;
  process.stdout.write("Caution: others can reach this server, and anybody can look up these passwords.\n");
}

for (const signal of /** @type {const} */ (["SIGINT", "SIGTERM", "SIGHUP"])) {
  process.on(signal, () => {
    if (isStopping) return;
    isStopping = true;
    process.stdout.write("\nStopping …\n");
    void stopChildren().then(() => process.exit(0));
  });
}

try {
  await start();
} catch (error) {
  if (!isStopping) {
    reportFailure(error);
    await stopChildren();
    process.exitCode = 1;
  }
}
