import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./paths.mjs";
import { runCommand } from "./run-command.mjs";
import { fingerprint, readStamp, writeStamp } from "./stamps.mjs";
import { StepError, step } from "./steps.mjs";

/**
 * @typedef {object} Prepared
 * @property {"embedded" | "postgresql"} kind
 * @property {{ role: string, name: string, email: string, password: string }[]} signIns empty without the demo
 */

/**
 * Brings the database up to date, and puts the demo into an empty one. A folder that this version has prepared
 * already is left as it is: nobody else changes it.
 *
 * @param {{ data: string, demo: boolean }} options
 * @returns {Promise<Prepared>}
 */
export async function prepareDatabase({ data, demo }) {
  if (process.env.DATABASE_URL) return step("Preparing the database", () => runPrepare(data, demo));
  const stampFile = join(data, "prepared");
  const version = fingerprint(root, ["prisma/migrations", "prisma/seed"]);
  const known = knownPreparation(readStamp(stampFile), version);
  // Somebody else's lock, or one left behind: the database package knows which, and says so.
  const isLocked = existsSync(join(data, "postgres.lock"));
  if (known !== null && !isLocked && existsSync(join(data, "postgres", "PG_VERSION"))) return known;
  const prepared = await step("Preparing the database", () => runPrepare(data, demo));
  writeStamp(stampFile, JSON.stringify({ version, prepared }));
  return prepared;
}

/**
 * @param {string | null} stamp
 * @param {string} version
 * @returns {Prepared | null}
 */
function knownPreparation(stamp, version) {
  if (stamp === null) return null;
  try {
    const content = JSON.parse(stamp);
    return content.version === version ? content.prepared : null;
  } catch {
    // Cut short by a full disk or a killed start: prepare again.
    return null;
  }
}

/**
 * @param {string} data
 * @param {boolean} demo
 * @returns {Promise<Prepared>}
 */
async function runPrepare(data, demo) {
  const folder = join(root, "packages", "database");
  const tsx = createRequire(join(folder, "package.json")).resolve("tsx");
  const args = ["--import", pathToFileURL(tsx).href, join("src", "cli.ts"), "prepare", "--data", data];
  if (!demo) args.push("--without-demo");
  const { code, stdout, output } = await runCommand(process.execPath, args, { cwd: folder });
  if (code === 0) return JSON.parse(stdout.trimEnd().split("\n").at(-1) ?? "");
  throw new StepError("The database could not be prepared.", {
    output,
    advice: process.env.DATABASE_URL
      ? "Check that the PostgreSQL server named in DATABASE_URL runs and lets this user in, then start again."
      : `The data folder is ${data}. Nothing in it was removed.`,
  });
}
