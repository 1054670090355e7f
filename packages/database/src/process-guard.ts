import { randomUUID } from "node:crypto";
import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { z } from "zod";
import { processStartTime } from "./process-start-time";

// `turbopackIgnore`: the bundler must not take the data folder for a part of the program.

/**
 * One process at a time on an embedded data folder: two PGlite instances on one folder destroy it.
 *
 * The lock is a file holding the process id and that process's start time, so that a lock left by a killed
 * process is recognised even when its id has been given to another program since.
 */
export class DataFolderInUseError extends Error {
  override readonly name = "DataFolderInUseError";
  readonly pid: number;

  constructor(folder: string, pid: number) {
    super(
      `The data folder ${folder} is in use by another running process (${pid}): stop that one first, or choose another folder.`,
    );
    this.pid = pid;
  }
}

const holderSchema = z.object({ pid: z.number().int().positive(), startTime: z.string().nullable() });

export type ReleaseLock = () => void;

/** Takes the lock or throws {@link DataFolderInUseError}. The lock is also given back when the process exits. */
export function lockDataFolder(folder: string, lockFile: string): ReleaseLock {
  mkdirSync(dirname(lockFile), { recursive: true });
  const mine = JSON.stringify({
    pid: process.pid,
    startTime: processStartTime(process.pid),
    key: randomUUID(),
  });
  // Written aside and then linked: a lock that exists always has its content.
  const draft = `${lockFile}.${randomUUID()}`;
  writeFileSync(draft, mine, { mode: 0o600 });
  try {
    while (!tryLink(draft, lockFile)) {
      const found = readIfThere(lockFile);
      if (found === null) continue;
      const holder = parseHolder(found);
      if (holder !== null && isAlive(holder)) throw new DataFolderInUseError(folder, holder.pid);
      moveAside(lockFile, found, folder);
    }
  } finally {
    rmSync(draft, { force: true });
  }
  const release = () => {
    process.off("exit", release);
    if (readIfThere(lockFile) === mine) rmSync(lockFile, { force: true });
  };
  process.once("exit", release);
  return release;
}

function tryLink(from: string, to: string): boolean {
  try {
    linkSync(from, to);
    return true;
  } catch (error) {
    if (hasCode(error, "EEXIST")) return false;
    throw error;
  }
}

/** Removes a stale lock. Of two processes doing so at once, the one that moved the other's fresh lock puts it back. */
function moveAside(lockFile: string, stale: string, folder: string): void {
  const aside = `${lockFile}.${randomUUID()}`;
  try {
    renameSync(lockFile, aside);
  } catch (error) {
    if (hasCode(error, "ENOENT")) return;
    throw error;
  }
  const moved = readFileSync(/*turbopackIgnore: true*/ aside, "utf8");
  if (moved !== stale) {
    tryLink(aside, lockFile);
    rmSync(aside, { force: true });
    throw new DataFolderInUseError(folder, parseHolder(moved)?.pid ?? 0);
  }
  rmSync(aside, { force: true });
}

function isAlive(holder: z.infer<typeof holderSchema>): boolean {
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    // EPERM: it lives, under another user.
    if (!hasCode(error, "EPERM")) return false;
  }
  const startTime = processStartTime(holder.pid);
  return startTime === null || holder.startTime === null || startTime === holder.startTime;
}

function parseHolder(text: string) {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    return null;
  }
  const parsed = holderSchema.safeParse(content);
  return parsed.success ? parsed.data : null;
}

function readIfThere(path: string): string | null {
  try {
    return readFileSync(/*turbopackIgnore: true*/ path, "utf8");
  } catch (error) {
    if (hasCode(error, "ENOENT")) return null;
    throw error;
  }
}

function hasCode(error: unknown, code: string): boolean {
  return error instanceof Error && "code" in error && error.code === code;
}
