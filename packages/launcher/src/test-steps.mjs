import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { findBrowser } from "./browser.mjs";
import { root } from "./paths.mjs";
import { findOrFetchPnpm } from "./pnpm.mjs";
import { runCommand } from "./run-command.mjs";
import { buildWeb, packageProgram, quiet } from "./set-up.mjs";
import { postgresForTests } from "./test-postgres.mjs";
import { countPlaywright, countVitest, stepOutcome } from "./test-reports.mjs";

/** @typedef {import("./test-reports.mjs").Counts} Counts */

/** Every step prints what people read and answers its counts. @type {Record<import("./arguments.mjs").TestStep, () => Promise<Counts>>} */
export const runners = {
  lint: () => check(process.execPath, [packageProgram(root, "@biomejs/biome", "biome"), "check", "."]),
  types: async () => {
    // turbo calls pnpm by name; the tests and the seed belong to no package and are checked from the root.
    const environment = await findOrFetchPnpm();
    const packages = await check(
      process.execPath,
      [packageProgram(root, "turbo"), "run", "types", "--continue", "--output-logs=errors-only"],
      environment,
    );
    const rest = await check(process.execPath, [packageProgram(root, "typescript", "tsc"), "-p", "."]);
    return packages.failed + rest.failed === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
  },
  unit: () => vitest("unit"),
  reference: () => vitest("reference"),
  contract: () => vitest("contract"),
  integration: async () => {
    const { url, stop } = await postgresForTests();
    try {
      return await vitest("integration", { TEST_DATABASE_URL: url });
    } finally {
      await stop();
    }
  },
  e2e: async () => {
    await buildWeb();
    return playwright({ PROBEWORTHY_CHROMIUM: await findBrowser() });
  },
};

/**
 * A check that counts as one: it passes or it does not.
 *
 * @param {string} command
 * @param {string[]} args
 * @param {Record<string, string>} [env]
 * @returns {Promise<Counts>}
 */
async function check(command, args, env = {}) {
  const { code } = await runCommand(command, args, { cwd: root, env: { ...quiet, ...env }, show: true });
  return code === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

/**
 * @param {string} project
 * @param {Record<string, string>} [env]
 */
function vitest(project, env = {}) {
  return withReport(async (report) => {
    const program = packageProgram(root, "vitest");
    const args = [program, "run", "--project", project, "--reporter=default", "--reporter=json"];
    args.push(`--outputFile.json=${report}`);
    return runCommand(process.execPath, args, { cwd: root, env, show: true });
  }, countVitest);
}

/** @param {Record<string, string>} env */
function playwright(env) {
  return withReport((report) => {
    const program = packageProgram(root, "@playwright/test", "playwright");
    const args = [program, "test", "--reporter=list,json"];
    return runCommand(process.execPath, args, {
      cwd: root,
      env: { ...quiet, ...env, PLAYWRIGHT_JSON_OUTPUT_FILE: report },
      show: true,
    });
  }, countPlaywright);
}

/**
 * @param {(report: string) => Promise<{ code: number }>} run writes its JSON report to the path it is given
 * @param {(report: unknown) => Counts} count
 * @returns {Promise<Counts>}
 */
async function withReport(run, count) {
  const folder = mkdtempSync(join(tmpdir(), "probeworthy-report-"));
  const report = join(folder, "report.json");
  try {
    const { code } = await run(report);
    const counts = existsSync(report)
      ? count(JSON.parse(readFileSync(report, "utf8")))
      : { passed: 0, failed: 0 };
    return stepOutcome(counts, code);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
