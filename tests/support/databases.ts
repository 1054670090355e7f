import { randomUUID } from "node:crypto";
import { readFileSync } from "node:fs";
import type { Database } from "@probeworthy/database";
import { type Connection, createDatabase, migrate, openConnection } from "@probeworthy/database/migrations";
import pg from "pg";

/** A migrated database of its own for one test file, and plain SQL beside the repositories. */
export interface TestDatabase {
  database: Database;
  connection: Connection;
  /** Runs one statement outside the repositories; values are bound to $1, $2 … */
  sql(statement: string, values?: unknown[]): Promise<Record<string, unknown>[]>;
  close(): Promise<void>;
}

export interface Backend {
  name: string;
  /** Migrated; `from: "nothing"` applies every migration here and now. */
  open(options?: { from: "nothing" }): Promise<TestDatabase>;
}

async function over(connection: Connection, discard: () => Promise<void>): Promise<TestDatabase> {
  await migrate(connection);
  const database = createDatabase(connection);
  const adapter = await connection.adapter.connect();
  return {
    database,
    connection,
    sql: async (statement, values = []) => {
      const argTypes = values.map(() => ({ scalarType: "string" as const, arity: "scalar" as const }));
      const query = { sql: statement, args: values, argTypes };
      const { columnNames, rows } = await adapter.queryRaw(query).catch(throwServerMessage);
      return rows.map((row) => Object.fromEntries(columnNames.map((name, index) => [name, row[index]])));
    },
    close: async () => {
      await database.close();
      await adapter.dispose();
      await discard();
    },
  };
}

/** The adapters wrap the server's words differently; tests want the words. */
function throwServerMessage(error: unknown): never {
  const cause = error instanceof Error ? error.cause : undefined;
  if (typeof cause === "object" && cause !== null && "originalMessage" in cause) {
    throw new Error(String(cause.originalMessage), { cause: error });
  }
  throw error;
}

async function openOnServer(): Promise<TestDatabase> {
  const server = process.env.TEST_DATABASE_URL;
  if (!server) throw new Error("TEST_DATABASE_URL is not set: the global set-up of the tests did not run");
  const name = `probeworthy_${randomUUID().replaceAll("-", "")}`;
  const administer = async (statement: string) => {
    const client = new pg.Client({ connectionString: server });
    await client.connect();
    try {
      await client.query(statement);
    } finally {
      await client.end();
    }
  };
  await administer(`CREATE DATABASE "${name}"`);
  const url = new URL(server);
  url.pathname = `/${name}`;
  const connection = await openConnection({ url: url.href });
  return over(connection, () => administer(`DROP DATABASE "${name}" WITH (FORCE)`));
}

function templateFile(): string {
  const file = process.env.PROBEWORTHY_TEST_TEMPLATE;
  if (!file)
    throw new Error("PROBEWORTHY_TEST_TEMPLATE is not set: the global set-up of the tests did not run");
  return file;
}

const embedded: Backend = {
  name: "embedded PGlite",
  open: async (options) => {
    const snapshot =
      options?.from === "nothing" ? undefined : new Blob([new Uint8Array(readFileSync(templateFile()))]);
    return over(await openConnection({ snapshot }), async () => {});
  },
};
const server: Backend = { name: "PostgreSQL server", open: openOnServer };

export const backends: readonly Backend[] = [embedded, server];
