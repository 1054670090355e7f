import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";

/**
 * When a process started, as an opaque text that is equal for the same process only; null when this system
 * does not say (the caller then has the process id alone to go by).
 */
export function processStartTime(pid: number): string | null {
  if (process.platform === "linux") return linuxStartTime(pid);
  if (process.platform === "win32") return null;
  const ps = spawnSync("ps", ["-o", "lstart=", "-p", String(pid)], { encoding: "utf8" });
  const text = ps.status === 0 ? ps.stdout.trim() : "";
  return text === "" ? null : text;
}

/** proc(5): field 22 of /proc/<pid>/stat is the start in clock ticks since boot; the boot id makes it unique. */
function linuxStartTime(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    // Field 2 is the program's name in brackets and may itself hold spaces and brackets.
    const afterName = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    const ticks = afterName[19];
    const boot = readFileSync("/proc/sys/kernel/random/boot_id", "utf8").trim();
    return ticks === undefined ? null : `${boot}:${ticks}`;
  } catch {
    return null;
  }
}
