import { randomBytes } from "node:crypto";
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/**
 * The secret that signs sessions: made once, kept in the data folder, readable by this user only.
 *
 * @param {string} data
 * @returns {string}
 */
export function serverSecret(data) {
  const file = join(data, "server-secret");
  mkdirSync(data, { recursive: true, mode: 0o700 });
  try {
    writeFileSync(file, `${randomBytes(32).toString("base64url")}\n`, { mode: 0o600, flag: "wx" });
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "EEXIST")) throw error;
    chmodSync(file, 0o600);
  }
  return readFileSync(file, "utf8").trim();
}
