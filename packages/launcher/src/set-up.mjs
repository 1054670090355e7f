// What has to be there before anything runs: packages, database client, built web. Each is made when it is missing
// or made from something older than what is on disk now.

import { existsSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { generateClientCommand } from "./generate-client.mjs";
import { nodeVersionProblem } from "./node-version.mjs";
import { root, webFolder } from "./paths.mjs";
import { findOrFetchPnpm } from "./pnpm.mjs";
import { runCommand } from "./run-command.mjs";
import { fingerprint, readStamp, writeStamp } from "./stamps.mjs";
import { StepError, step } from "./steps.mjs";

/** No tool reports home from somebody's classroom. */
export const quiet = { NEXT_TELEMETRY_DISABLED: "1", TURBO_TELEMETRY_DISABLED: "1", DO_NOT_TRACK: "1" };

export function checkNode() {
  const problem = nodeVersionProblem(process.versions.node);
  if (problem !== null) throw new StepError(problem);
}

export async function installPackages() {
  const stampFile = join(root, "node_modules", ".probeworthy-installed");
  const wanted = fingerprint(root, ["pnpm-lock.yaml", "pnpm-workspace.yaml"]);
  if (readStamp(stampFile) === wanted) return;
  const environment = await step("Finding pnpm", findOrFetchPnpm);
  await step("Installing packages (a minute or two the first time)", async () => {
    const args = ["install", "--frozen-lockfile"];
    // CI: pnpm asks no questions.
    const env = { ...quiet, ...environment, CI: "true" };
    const { code, output } = await runCommand("pnpm", args, { cwd: root, env });
    if (code === 0) return;
    throw new StepError("The packages could not be installed.", {
      output,
      advice: "Check that this computer reaches the npm registry, then start again.",
    });
  });
  writeStamp(stampFile, wanted);
}

export async function generateClient() {
  const generated = join(root, "packages", "database", "src", "generated");
  const stampFile = join(generated, ".made-from");
  const wanted = fingerprint(root, ["prisma/schema", "packages/database/package.json", "pnpm-lock.yaml"]);
  if (readStamp(stampFile) === wanted) return;
  await step("Generating the database client", async () => {
    const { command, args, cwd, env } = generateClientCommand();
    const { code, output } = await runCommand(command, args, { cwd, env });
    if (code === 0) return;
    throw new StepError("The database client could not be generated.", {
      output,
      advice: "Delete the folder node_modules and start again.",
    });
  });
  writeStamp(stampFile, wanted);
}

/** @param {string} path */
const isWebSource = (path) => !/\.test\.tsx?$|\.md$|\.tsbuildinfo$|next-env\.d\.ts$/.test(path);

const webSources = ["apps/web", "packages", "prisma/schema", "pnpm-lock.yaml", "tsconfig.base.json"];

export async function buildWeb() {
  const stampFile = join(webFolder, ".next", "made-from");
  const isSource = (/** @type {string} */ path) => isWebSource(path) && !path.includes("packages/launcher/");
  const wanted = fingerprint(root, webSources, isSource);
  if (readStamp(stampFile) === wanted && existsSync(join(webFolder, ".next", "BUILD_ID"))) return;
  // A build that fails half-way leaves a folder that belongs to neither the old nor the new sources.
  rmSync(stampFile, { force: true });
  await step("Building the web (a minute or two after every change)", async () => {
    const env = { ...quiet, NODE_ENV: "production" };
    const { code, output } = await runCommand(process.execPath, [nextProgram(), "build"], {
      cwd: webFolder,
      env,
    });
    if (code === 0) return;
    throw new StepError("The web could not be built.", {
      output,
      advice: "The lines above name the file. If you changed nothing, delete apps/web/.next and start again.",
    });
  });
  writeStamp(stampFile, wanted);
}

export const nextProgram = () => join(packageFolder(webFolder, "next"), "dist", "bin", "next");

/**
 * Folder of an installed package, as seen from another one.
 *
 * @param {string} from
 * @param {string} name
 */
export function packageFolder(from, name) {
  return dirname(createRequire(join(from, "package.json")).resolve(`${name}/package.json`));
}

/**
 * Path of a program a package brings.
 *
 * @param {string} from
 * @param {string} name
 * @param {string} [program] when the package brings several
 */
export function packageProgram(from, name, program = name) {
  const folder = packageFolder(from, name);
  const { bin } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const path = typeof bin === "string" ? bin : bin[program];
  return join(folder, path);
}

export async function setUp() {
  checkNode();
  await installPackages();
  await generateClient();
  await buildWeb();
}
