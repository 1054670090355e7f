import { spawn } from "node:child_process";
import { setTimeout as wait } from "node:timers/promises";
import { defaultPort } from "./arguments.mjs";
import { webFolder } from "./paths.mjs";
import { isPortFree } from "./ports.mjs";
import { ownGroup, track } from "./run-command.mjs";
import { serverSecret } from "./server-secret.mjs";
import { nextProgram, quiet } from "./set-up.mjs";
import { StepError } from "./steps.mjs";

/**
 * The port asked for, or the first free one from the default on.
 *
 * @param {number | null} asked
 * @param {string} host
 * @returns {Promise<number>}
 */
export async function choosePort(asked, host) {
  const candidates = asked === null ? Array.from({ length: 20 }, (_, index) => defaultPort + index) : [asked];
  for (const port of candidates) {
    if (await canListen(port, host)) return port;
  }
  throw new StepError(
    asked === null
      ? `Ports ${defaultPort} to ${defaultPort + 19} are all taken: name another one with --port.`
      : `Port ${asked} is taken by another program: choose another one with --port, or leave --port out.`,
  );
}

/**
 * @param {number} port
 * @param {string} host
 */
async function canListen(port, host) {
  try {
    return await isPortFree(port, host);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new StepError(`This computer cannot serve on the address ${host} (${reason}).`, {
      advice: "Leave --host out to serve on this computer only, or use 0.0.0.0 for every address it has.",
    });
  }
}

/**
 * @typedef {object} Server
 * @property {string} address
 * @property {Promise<number>} ended its exit code
 */

/**
 * Starts the built web and waits until it answers.
 *
 * @param {{ port: number, host: string, data: string, demo: boolean }} options
 * @returns {Promise<Server>}
 */
export async function serve({ port, host, data, demo }) {
  const child = spawn(
    process.execPath,
    [
      "--import",
      new URL("end-with-parent.mjs", import.meta.url).href,
      nextProgram(),
      "start",
      "--hostname",
      host,
      "--port",
      String(port),
    ],
    {
      cwd: webFolder,
      env: {
        ...process.env,
        ...quiet,
        NODE_ENV: "production",
        NEXTAUTH_SECRET: process.env.NEXTAUTH_SECRET || serverSecret(data),
        PROBEWORTHY_DATA: data,
        PROBEWORTHY_DEMO: demo ? "1" : "0",
      },
      stdio: ["ignore", "pipe", "pipe", "ipc"],
      ...ownGroup,
    },
  );
  track(child);
  let output = "";
  let isReady = false;
  for (const [stream, target] of /** @type {const} */ ([
    [child.stdout, process.stdout],
    [child.stderr, process.stderr],
  ])) {
    stream?.setEncoding("utf8").on("data", (text) => {
      if (isReady) target.write(text);
      else output += text;
    });
  }
  /** @type {Promise<number>} */
  const ended = new Promise((resolve) => child.once("close", (code) => resolve(code ?? 1)));
  const address = `http://${host.includes(":") ? `[${host}]` : host}:${port}`;
  await untilItAnswers(probeAddress(host, port), ended, () => output);
  isReady = true;
  return { address, ended };
}

/**
 * An address for every interface cannot be called; this computer's own can.
 *
 * @param {string} host
 * @param {number} port
 */
function probeAddress(host, port) {
  const callable =
    host === "0.0.0.0" ? "127.0.0.1" : host === "::" ? "[::1]" : host.includes(":") ? `[${host}]` : host;
  return `http://${callable}:${port}/api/health`;
}

/**
 * @param {string} url
 * @param {Promise<number>} ended
 * @param {() => string} output
 */
async function untilItAnswers(url, ended, output) {
  let endedWith = /** @type {number | null} */ (null);
  void ended.then((code) => {
    endedWith = code;
  });
  const giveUp = Date.now() + 60_000;
  let last = "no answer";
  while (Date.now() < giveUp) {
    if (endedWith !== null) {
      throw new StepError(`The web server ended with code ${endedWith} before it answered.`, {
        output: output(),
      });
    }
    try {
      // A connection kept alive would make the server wait for us when it is told to stop.
      const response = await fetch(url, {
        headers: { connection: "close" },
        signal: AbortSignal.timeout(5000),
      });
      await response.arrayBuffer();
      if (response.ok) return;
      last = `status ${response.status}`;
    } catch (error) {
      last = error instanceof Error ? error.message : String(error);
    }
    await wait(50);
  }
  throw new StepError(`The web server did not become ready within a minute (${last}).`, { output: output() });
}
