import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { cacheFolder, root } from "./paths.mjs";
import { runCommand } from "./run-command.mjs";
import { StepError } from "./steps.mjs";

/** @returns {string} the exact version package.json names */
export function wantedPnpmVersion() {
  const { packageManager } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  const [, version] = /^pnpm@(\d+\.\d+\.\d+)/.exec(packageManager) ?? [];
  if (version === undefined) throw new Error(`package.json names no pnpm version: ${packageManager}`);
  return version;
}

/**
 * Makes `pnpm` callable by name: the right major version on PATH already, else the exact version fetched through
 * npm into .cache.
 *
 * @returns {Promise<{ PATH: string }>} environment in which pnpm, and everything that calls it, finds it
 */
export async function findOrFetchPnpm() {
  const wanted = wantedPnpmVersion();
  const major = wanted.split(".")[0];
  const path = process.env.PATH ?? "";
  if ((await versionOn(path))?.split(".")[0] === major) return { PATH: path };

  const folder = join(cacheFolder, `pnpm-${wanted}`);
  const ours = `${join(folder, "bin")}${delimiter}${path}`;
  if ((await versionOn(ours)) === wanted) return { PATH: ours };
  mkdirSync(folder, { recursive: true });
  // A prefix of its own: npm must neither read nor write this workspace.
  const args = ["install", "--prefix", folder, "--no-save", "--no-audit", "--no-fund", `pnpm@${wanted}`];
  const { code, output } = await runCommand("npm", args, { cwd: folder });
  if (code === 0) writeProgram(folder);
  if (code === 0 && (await versionOn(ours)) === wanted) return { PATH: ours };
  throw new StepError(`pnpm ${wanted} could not be fetched through npm.`, {
    output,
    advice: `Check that this computer reaches the npm registry, or install pnpm ${major} yourself and start again.`,
  });
}

/**
 * npm may refuse the build script that puts pnpm's program in place. The JavaScript entry in the package needs no
 * build; this wraps it so that it can be called by name.
 *
 * @param {string} folder
 */
function writeProgram(folder) {
  const entry = ["pnpm.mjs", "pnpm.cjs"]
    .map((name) => join(folder, "node_modules", "pnpm", "bin", name))
    .find((path) => existsSync(path));
  if (entry === undefined) return;
  mkdirSync(join(folder, "bin"), { recursive: true });
  const shell = join(folder, "bin", "pnpm");
  writeFileSync(shell, `#!/bin/sh\nexec "${process.execPath}" "${entry}" "$@"\n`);
  chmodSync(shell, 0o755);
  writeFileSync(join(folder, "bin", "pnpm.cmd"), `@"${process.execPath}" "${entry}" %*\r\n`);
}

/**
 * @param {string} path
 * @returns {Promise<string | null>}
 */
async function versionOn(path) {
  mkdirSync(cacheFolder, { recursive: true });
  const { code, stdout } = await runCommand("pnpm", ["--version"], { cwd: cacheFolder, env: { PATH: path } });
  return code === 0 ? stdout.trim() : null;
}
