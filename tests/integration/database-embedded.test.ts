import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath, pathToFileURL } from "node:url";
import { DataFolderInUseError, openDatabase } from "@probeworthy/database";
import { openMigratedDatabase } from "@probeworthy/database/migrations";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { eventOf, makeAttempt, makeSchool, must } from "../support/factories";

interface Acknowledged {
  organisationId: string;
  attemptId: string;
  sequence: number;
}

// Each test opens several databases in processes of their own: seconds on a quiet machine, minutes on a busy one.
describe("embedded database in a folder", { timeout: 300_000 }, () => {
  let folder: string;
  let writer: ChildProcess | undefined;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "probeworthy-data-"));
  });
  afterEach(async () => {
    if (writer !== undefined) await kill(writer);
    writer = undefined;
    rmSync(folder, { recursive: true, force: true });
  });

  const kill = async (child: ChildProcess): Promise<void> => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    const ended = once(child, "exit");
    child.kill("SIGKILL");
    await ended;
  };

  /** Starts a process that writes into the folder; answers once it has acknowledged `count` events. */
  const startWriter = async (count: number) => {
    const tsx = pathToFileURL(createRequire(import.meta.url).resolve("tsx")).href;
    const program = fileURLToPath(new URL("../support/event-writer.ts", import.meta.url));
    const child = spawn(process.execPath, ["--import", tsx, program, folder], {
      stdio: ["ignore", "pipe", "pipe"],
    });
    writer = child;
    let complaint = "";
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      complaint += text;
    });
    const acknowledged: Acknowledged[] = [];
    const enough = new Promise<void>((resolve, reject) => {
      createInterface({ input: child.stdout }).on("line", (line) => {
        acknowledged.push(JSON.parse(line) as Acknowledged);
        if (acknowledged.length === count) resolve();
      });
      child.once("exit", () => reject(new Error(`the writer ended early: ${complaint}`)));
    });
    await enough;
    return { child, acknowledged };
  };

  it("loses no acknowledged event when the process is killed while writing", async () => {
    for (const count of [20, 55]) {
      const { child, acknowledged } = await startWriter(count);
      await kill(child);
      const last = acknowledged.at(-1)!;
      const { database } = await openMigratedDatabase({ dataDirectory: folder });
      try {
        const attempt = await database.attempts.getForStaff(last);
        const events = await database.attempts.events(last);
        expect(events.map(({ sequence }) => sequence)).toEqual(events.map((_, index) => index + 1));
        expect(events.length).toBeGreaterThanOrEqual(last.sequence);
        expect(attempt?.sequence).toBe(events.length);
      } finally {
        await database.close();
      }
    }
  });

  it("refuses a second process while the first lives, and lets it in afterwards", async () => {
    const { child } = await startWriter(1);
    const refused = openDatabase({ dataDirectory: folder });
    await expect(refused).rejects.toThrow(DataFolderInUseError);
    await expect(refused).rejects.toThrow(
      `The data folder ${folder} is in use by another running process (${child.pid}): stop that one first, or choose another folder.`,
    );
    await kill(child);
    expect(existsSync(join(folder, "postgres.lock"))).toBe(true);
    const database = await openDatabase({ dataDirectory: folder });
    await database.ping();
    await database.close();
    expect(existsSync(join(folder, "postgres.lock"))).toBe(false);
  });

  it("takes over the lock of a process whose number another one has since", async () => {
    const reused = { pid: process.pid, startTime: "long ago" };
    writeFileSync(join(folder, "postgres.lock"), JSON.stringify(reused));
    const database = await openDatabase({ dataDirectory: folder });
    expect(JSON.parse(readFileSync(join(folder, "postgres.lock"), "utf8"))).not.toMatchObject(reused);
    await database.close();
  });

  it("is shared by all who open it in one process, and closed by the last", async () => {
    const first = await openMigratedDatabase({ dataDirectory: folder });
    const second = await openDatabase({ dataDirectory: folder });
    const school = await makeSchool(first.database);
    const attemptId = await makeAttempt(second, school);
    await first.database.close();
    must(await second.attempts.appendEvent(eventOf(school, attemptId, 0)));
    await second.close();
    const again = await openDatabase({ dataDirectory: folder });
    expect(await again.attempts.events({ ...school, attemptId })).toHaveLength(1);
    await again.close();
  });
});
