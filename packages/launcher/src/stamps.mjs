// A stamp says what a result was made from, so that nothing is made twice. It is a hash over file contents:
// slower than dates, but a fresh checkout or a touched file does not cause a rebuild.

import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";

/** Folders that are results themselves, never sources. */
const results = new Set(["node_modules", ".next", ".turbo", "generated", "coverage", "test-results"]);

/**
 * Hash over the names and contents of files; folders are walked, what does not exist counts as absent.
 *
 * @param {string} base names are taken relative to this folder
 * @param {string[]} paths files and folders, relative to base
 * @param {(path: string) => boolean} [isSource] asked for every file found in a folder
 * @returns {string}
 */
export function fingerprint(base, paths, isSource = () => true) {
  const hash = createHash("sha256");
  for (const path of paths) {
    for (const file of filesBelow(join(base, path), isSource)) {
      hash.update(relative(base, file)).update("\0");
      // Latin-1 keeps every byte of a file that is not text.
      hash.update(createHash("sha256").update(readFileSync(file, "latin1")).digest("hex"));
    }
  }
  return hash.digest("hex");
}

/**
 * @param {string} path
 * @param {(path: string) => boolean} isSource
 * @returns {string[]} in an order that does not depend on the file system
 */
function filesBelow(path, isSource) {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return [];
  if (!found.isDirectory()) return [path];
  return readdirSync(path, { withFileTypes: true })
    .filter((entry) => !results.has(entry.name))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const child = join(path, entry.name);
      if (entry.isDirectory()) return filesBelow(child, isSource);
      return entry.isFile() && isSource(child) ? [child] : [];
    });
}

/**
 * @param {string} path
 * @returns {string | null}
 */
export function readStamp(path) {
  try {
    return readFileSync(path, "utf8").trim();
  } catch {
    return null;
  }
}

/**
 * @param {string} path
 * @param {string} value
 */
export function writeStamp(path, value) {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `${value}\n`);
}
