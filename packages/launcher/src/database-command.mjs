import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./paths.mjs";
import { runCommand } from "./run-command.mjs";
import { StepError } from "./steps.mjs";

/**
 * @typedef {object} Prepared
 * @property {"embedded" | "postgresql"} kind
 * @property {{ role: string, name: string, email: string, password: string }[]} signIns empty without the demo
 */

/**
 * Brings the database up to date, and puts the demo into an empty one.
 *
 * @param {{ data: string, demo: boolean }} options
 * @returns {Promise<Prepared>}
 */
export async function prepareDatabase({ data, demo }) {
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
