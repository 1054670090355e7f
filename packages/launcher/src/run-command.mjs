import { spawn } from "node:child_process";

/** @type {Set<import("node:child_process").ChildProcess>} */
const running = new Set();

/**
 * @typedef {object} CommandOptions
 * @property {string} [cwd]
 * @property {Record<string, string | undefined>} [env] added to this process's environment; undefined removes
 * @property {boolean} [show] also print the output as it comes
 */

/**
 * Runs a program to its end.
 *
 * @param {string} command
 * @param {string[]} args
 * @param {CommandOptions} [options]
 * @returns {Promise<{ code: number, stdout: string, output: string }>} `output` is both streams as they came;
 *   a program that does not exist ends with code 127
 */
export function runCommand(command, args, { cwd, env = {}, show = false } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd,
      env: { ...process.env, ...env },
      stdio: ["ignore", "pipe", "pipe"],
      // npm and pnpm are scripts on Windows, which only a shell can start.
      shell: process.platform === "win32" && !command.includes("\\"),
      ...ownGroup,
    });
    track(child);
    let stdout = "";
    let output = "";
    child.stdout.setEncoding("utf8").on("data", (text) => {
      stdout += text;
      output += text;
      if (show) process.stdout.write(text);
    });
    child.stderr.setEncoding("utf8").on("data", (text) => {
      output += text;
      if (show) process.stderr.write(text);
    });
    child.on("error", (error) => resolve({ code: 127, stdout, output: `${output}${error.message}\n` }));
    child.on("close", (code) => resolve({ code: code ?? 1, stdout, output }));
  });
}

/**
 * Children get a process group of their own, so that what they start is stopped with them and a Ctrl-C in the
 * terminal reaches them once, through us. Windows has no such groups.
 */
export const ownGroup = { detached: process.platform !== "win32" };

/** @param {import("node:child_process").ChildProcess} child */
export function track(child) {
  running.add(child);
  child.once("close", () => running.delete(child));
}

/**
 * Asks every child to stop and waits until all have; insists after a while.
 *
 * @param {number} [patience] milliseconds
 */
export async function stopChildren(patience = 10_000) {
  const children = [...running];
  const ended = Promise.all(
    children.map((child) => new Promise((resolve) => child.once("close", () => resolve(undefined)))),
  );
  for (const child of children) signal(child, "SIGTERM");
  const insist = setTimeout(() => {
    for (const child of children) signal(child, "SIGKILL");
  }, patience);
  await ended;
  clearTimeout(insist);
}

/**
 * @param {import("node:child_process").ChildProcess} child
 * @param {NodeJS.Signals} name
 */
function signal(child, name) {
  if (child.pid === undefined) return;
  try {
    process.kill(process.platform === "win32" ? child.pid : -child.pid, name);
  } catch (error) {
    // Gone in the meantime.
    if (!(error instanceof Error && "code" in error && error.code === "ESRCH")) throw error;
  }
}
