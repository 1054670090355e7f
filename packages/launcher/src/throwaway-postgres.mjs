// A PostgreSQL server that lives for one test run in a temporary folder. Only Node and PostgreSQL's own programs.

import { execFile, spawn, spawnSync } from "node:child_process";
import {
  accessSync,
  chmodSync,
  chownSync,
  constants,
  existsSync,
  mkdtempSync,
  readdirSync,
  realpathSync,
  rmSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, dirname, join } from "node:path";
import { promisify } from "node:util";
import { findFreePort } from "./ports.mjs";

const run = promisify(execFile);

/**
 * The folder with `initdb`, `pg_ctl` and `postgres`, or null when this machine has no PostgreSQL.
 *
 * @param {Record<string, string | undefined>} environment
 * @returns {string | null}
 */
export function findPostgresPrograms(environment) {
  const onPath = (environment.PATH ?? "")
    .split(delimiter)
    .filter((folder) => folder !== "" && existsSync(join(folder, "initdb")))
    // Debian keeps the programs of each version together; a link in PATH leads there.
    .map((folder) => dirname(realpathSync(join(folder, "initdb"))));
  const debian = "/usr/lib/postgresql";
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : [];
  const folders = [...onPath, ...versions.map((version) => join(debian, version, "bin"))];
  return (
    folders.find((folder) => ["initdb", "pg_ctl", "postgres"].every((name) => canRun(join(folder, name)))) ??
    null
  );
}

/** @param {string} path */
function canRun(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Starts a server on a free loopback port. PostgreSQL refuses to run as root, so root starts it as another user.
 *
 * @param {string} programs folder found by {@link findPostgresPrograms}
 * @returns {Promise<{ url: string, stop: () => Promise<void> }>}
 */
export async function startThrowawayPostgres(programs) {
  const folder = mkdtempSync(join(tmpdir(), "probeworthy-postgres-"));
  const identity = await unprivilegedIdentity();
  if (identity !== null) {
    chownSync(folder, identity.uid, identity.gid);
    chmodSync(folder, 0o700);
  }
  const data = join(folder, "data");
  const options = { cwd: folder, ...(identity ?? {}) };
  const port = await findFreePort("127.0.0.1");
  try {
    await run(
      join(programs, "initdb"),
      [
        "--pgdata",
        data,
        "--username",
        "probeworthy",
        "--auth",
        "trust",
        "--encoding",
        "UTF8",
        "--no-locale",
        "--no-sync",
      ],
      options,
    );
    // Durability is pointless in a folder that is deleted afterwards; without it the tests are quick.
    const settings = `-h 127.0.0.1 -p ${port} -k "" -c fsync=off -c synchronous_commit=off -c full_page_writes=off -c max_connections=200`;
    await startServer(
      join(programs, "pg_ctl"),
      ["--pgdata", data, "--log", join(folder, "log"), "--options", settings, "--wait", "start"],
      options,
    );
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    throw error;
  }
  const stopArguments = ["--pgdata", data, "--mode", "immediate", "--wait", "stop"];
  // The server is nobody's child: a run that is interrupted takes it along on its way out.
  const stopAtExit = () => {
    spawnSync(join(programs, "pg_ctl"), stopArguments, { ...options, stdio: "ignore" });
    rmSync(folder, { recursive: true, force: true });
  };
  process.once("exit", stopAtExit);
  return {
    url: `postgresql://probeworthy@127.0.0.1:${port}/postgres`,
    stop: async () => {
      process.off("exit", stopAtExit);
      await run(join(programs, "pg_ctl"), stopArguments, options);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/**
 * `pg_ctl start` leaves a server behind that would hold our pipes open: it gets none.
 *
 * @param {string} command
 * @param {string[]} args
 * @param {object} options
 * @returns {Promise<void>}
 */
function startServer(command, args, options) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { ...options, stdio: "ignore" });
    child.on("error", reject);
    child.on("exit", (code) => {
      if (code === 0) resolve();
      else reject(new Error(`the throw-away PostgreSQL server did not start (pg_ctl ended with ${code})`));
    });
  });
}

/** @returns {Promise<{ uid: number, gid: number } | null>} null when this process may run PostgreSQL itself */
async function unprivilegedIdentity() {
  if (process.getuid?.() !== 0) return null;
  for (const user of ["postgres", "nobody"]) {
    try {
      const uid = Number((await run("id", ["-u", user])).stdout);
      const gid = Number((await run("id", ["-g", user])).stdout);
      return { uid, gid };
    } catch {
      // No such user here: try the next.
    }
  }
  throw new Error(
    "PostgreSQL refuses to run as root, and this machine has neither a postgres nor a nobody user",
  );
}
