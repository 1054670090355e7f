import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const program = "/usr/bin/ngspice";

export const hasNativeNgspice = existsSync(program);

/** Runs the lines of a deck in a process of its own; the seconds are those of the whole process. */
export function runNativeNgspice(lines: readonly string[]): {
  readonly printed: string;
  readonly seconds: number;
} {
  const folder = mkdtempSync(join(tmpdir(), "probeworthy-ngspice-"));
  try {
    const path = join(folder, "deck.cir");
    writeFileSync(path, ["bench", ...lines, ".end", ""].join("\n"));
    const start = performance.now();
    const { status, stdout, stderr, error } = spawnSync(program, ["-b", path], { encoding: "utf8" });
    const seconds = (performance.now() - start) / 1e3;
    if (error !== undefined) throw error;
    if (status !== 0) throw new Error(`ngspice ended with ${status}: ${stderr.slice(-500)}`);
    return { printed: stdout, seconds };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
