import { existsSync } from "node:fs";
import { runCommand } from "./run-command.mjs";
import { say } from "./steps.mjs";

/**
 * Installs a package where that is possible without asking: on Debian and its kin, as root.
 *
 * @param {string} name
 * @returns {Promise<boolean>}
 */
export async function debianInstall(name) {
  if (!existsSync("/etc/debian_version") || process.getuid?.() !== 0) return false;
  say(`Installing ${name} with apt-get …`);
  const env = { DEBIAN_FRONTEND: "noninteractive" };
  const updated = await runCommand("apt-get", ["update", "-qq"], { env });
  if (updated.code !== 0) return false;
  const installed = await runCommand("apt-get", ["install", "-y", "-qq", "--no-install-recommends", name], {
    env,
  });
  return installed.code === 0;
}
