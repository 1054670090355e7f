import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { migrate, openConnection } from "@probeworthy/database/migrations";
import {
  findPostgresPrograms,
  startThrowawayPostgres,
} from "../../packages/launcher/src/throwaway-postgres.mjs";

/**
 * Global set-up of the integration tests. A PostgreSQL server: `npm test` names one in TEST_DATABASE_URL; by hand a
 * throw-away server is started. And the dump of one migrated embedded database, which the others start from.
 */
export default async function prepareDatabases(): Promise<() => Promise<void>> {
  const stopServer = await startServer();
  const folder = mkdtempSync(join(tmpdir(), "probeworthy-template-"));
  const template = join(folder, "embedded.tar");
  writeFileSync(template, await migratedDump());
  process.env.PROBEWORTHY_TEST_TEMPLATE = template;
  return async () => {
    rmSync(folder, { recursive: true, force: true });
    await stopServer();
  };
}

async function startServer(): Promise<() => Promise<void>> {
  if (process.env.TEST_DATABASE_URL) return async () => {};
  const programs = findPostgresPrograms(process.env);
  if (programs === null) {
    throw new Error(
      "The integration tests need PostgreSQL: install it, or set TEST_DATABASE_URL to a server.",
    );
  }
  const { url, stop } = await startThrowawayPostgres(programs);
  process.env.TEST_DATABASE_URL = url;
  return stop;
}

async function migratedDump(): Promise<Uint8Array> {
  const connection = await openConnection({});
  try {
    await migrate(connection);
    if (connection.dump === null) throw new Error("the embedded database gives no dump");
    return new Uint8Array(await (await connection.dump()).arrayBuffer());
  } finally {
    await connection.close();
  }
}
