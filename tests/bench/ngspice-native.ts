import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const program = "/usr/bin/ngspice";

export const hasNativeNgspice = existsSync(program);

/**
 * Runs the lines of a deck in a process of its own. The seconds are CPU time of the whole process, to the hundredth: the
 * shell says at the end what its children have used.
 */
export function runNativeNgspice(lines: readonly string[]): {
  readonly printed: string;
  readonly cpuSeconds: number;
} {
  const folder = mkdtempSync(join(tmpdir(), "probeworthy-ngspice-"));
  try {
    const path = join(folder, "deck.cir");
    writeFileSync(path, ["bench", ...lines, ".end", ""].join("\n"));
    const script = `${program} -b "$1" && times`;
    const { status, stdout, stderr, error } = spawnSync("/bin/sh", ["-c", script, "sh", path], {
      encoding: "utf8",
      // Every operating point is printed.
      maxBuffer: 1 << 28,
    });
    if (error !== undefined) throw error;
    if (status !== 0) throw new Error(`ngspice ended with ${status}: ${stderr.slice(-500)}`);
    const used = /(\d+)m([\d.]+)s (\d+)m([\d.]+)s\s*$/.exec(stdout);
    if (used === null) throw new Error(`The shell told no times: ${stdout.slice(-200)}`);
    const [userMinutes, user, systemMinutes, system] = used.slice(1).map(Number);
    const cpuSeconds = 60 * ((userMinutes ?? 0) + (systemMinutes ?? 0)) + (user ?? 0) + (system ?? 0);
    return { printed: stdout, cpuSeconds };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
