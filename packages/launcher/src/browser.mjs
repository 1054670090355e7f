import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { debianInstall } from "./debian.mjs";
import { root } from "./paths.mjs";
import { runCommand } from "./run-command.mjs";
import { packageFolder, packageProgram } from "./set-up.mjs";
import { StepError } from "./steps.mjs";

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/**
 * A Chromium for the end-to-end tests: the one named in PROBEWORTHY_CHROMIUM, one on PATH, the one Playwright
 * downloads, or Debian's.
 *
 * @returns {Promise<string>} path of the program
 */
export async function findBrowser() {
  const named = process.env.PROBEWORTHY_CHROMIUM;
  if (named) {
    if (existsSync(named)) return named;
    throw new StepError(`PROBEWORTHY_CHROMIUM names ${named}, and there is no such file.`);
  }
  const found =
    findOnPath(process.env.PATH ?? "", names) ??
    (await downloadWithPlaywright()) ??
    ((await debianInstall("chromium")) ? findOnPath(process.env.PATH ?? "", names) : null);
  if (found !== null) return found;
  throw new StepError(
    "The end-to-end tests need a browser: install Chromium or Chrome and run npm test again.",
  );
}

/**
 * @param {string} path
 * @param {string[]} programs
 * @returns {string | null}
 */
export function findOnPath(path, programs) {
  const places = path.split(delimiter).filter((folder) => folder !== "");
  const candidates = programs.flatMap((name) => places.map((folder) => join(folder, name)));
  return candidates.find(isProgram) ?? null;
}

/** @param {string} path */
function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** @returns {Promise<string | null>} null when the download is not possible here */
async function downloadWithPlaywright() {
  const cli = packageProgram(root, "@playwright/test", "playwright");
  const { code } = await runCommand(process.execPath, [cli, "install", "chromium"], { cwd: root });
  if (code !== 0) return null;
  const test = packageFolder(root, "@playwright/test");
  const { chromium } = await import(join(test, "index.mjs"));
  const path = chromium.executablePath();
  return existsSync(path) ? path : null;
}
