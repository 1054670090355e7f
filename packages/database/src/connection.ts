import { mkdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { PGlite } from "@electric-sql/pglite";
import { PrismaPg } from "@prisma/adapter-pg";
import type { SqlMigrationAwareDriverAdapterFactory } from "@prisma/driver-adapter-utils";
import { PrismaPGlite } from "pglite-prisma-adapter";
import { lockDataFolder } from "./process-guard";

export type DatabaseKind = "embedded" | "postgresql";

export interface ConnectionOptions {
  /** Address of a PostgreSQL server. When given, `dataDirectory` is not used. */
  url?: string | undefined;
  /** Folder of the embedded database. Without it and without `url` the database lives in memory (tests). */
  dataDirectory?: string | undefined;
  /** What the database in memory starts from instead of nothing: another one's dump, several times quicker. */
  snapshot?: Blob | undefined;
}

export interface Connection {
  kind: DatabaseKind;
  adapter: SqlMigrationAwareDriverAdapterFactory;
  /** The embedded database's contents, for another one to start from; null for a server. */
  dump: (() => Promise<Blob>) | null;
  /** For the migration engine: the same database, with scripts run whole and on one connection. */
  migrationAdapter: SqlMigrationAwareDriverAdapterFactory;
  close(): Promise<void>;
}

export async function openConnection(options: ConnectionOptions): Promise<Connection> {
  if (options.url !== undefined) return openServer(options.url);
  if (options.dataDirectory !== undefined) return openFolder(resolve(options.dataDirectory));
  const { snapshot } = options;
  return embedded(await PGlite.create(snapshot === undefined ? {} : { loadDataDir: snapshot }));
}

function openServer(url: string): Connection {
  return {
    kind: "postgresql",
    adapter: new PrismaPg({ connectionString: url }),
    dump: null,
    migrationAdapter: wholeScripts(new PrismaPg({ connectionString: url, max: 1 })),
    close: async () => {},
  };
}

/**
 * PrismaPg cuts a script at every semicolon, also inside a function body, and would run the pieces one by one.
 * PostgreSQL takes a script whole, as one transaction. One connection, because the engine's lock against a
 * second migrating process belongs to a connection.
 */
function wholeScripts(factory: PrismaPg): SqlMigrationAwareDriverAdapterFactory {
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: async () => {
      const adapter = await factory.connect();
      adapter.executeScript = async (script) => {
        await adapter.underlyingDriver().query(script);
      };
      return adapter;
    },
    connectToShadowDb: () => factory.connectToShadowDb(),
  };
}

function embedded(pglite: PGlite, release: () => void = () => {}): Connection {
  const adapter = new PrismaPGlite(pglite);
  return {
    kind: "embedded",
    adapter,
    dump: () => pglite.dumpDataDir("none"),
    migrationAdapter: adapter,
    close: async () => {
      if (!pglite.closed) await pglite.close();
      release();
    },
  };
}

interface SharedFolder {
  connection: Promise<Connection>;
  users: number;
}

declare global {
  // A bundler may load this module several times in one process; the folder still has one PGlite.
  var probeworthyOpenFolders: Map<string, SharedFolder> | undefined;
}

/** Within one process every opener of a folder shares one PGlite; the last to close it closes it. */
async function openFolder(dataDirectory: string): Promise<Connection> {
  globalThis.probeworthyOpenFolders ??= new Map();
  const folders = globalThis.probeworthyOpenFolders;
  let shared = folders.get(dataDirectory);
  if (shared === undefined) {
    shared = { connection: createInFolder(dataDirectory), users: 0 };
    folders.set(dataDirectory, shared);
  }
  shared.users += 1;
  const mine = shared;
  const leave = () => {
    mine.users -= 1;
    if (mine.users === 0) folders.delete(dataDirectory);
    return mine.users === 0;
  };
  try {
    const connection = await mine.connection;
    let closed = false;
    return {
      ...connection,
      close: async () => {
        if (closed) return;
        closed = true;
        if (leave()) await connection.close();
      },
    };
  } catch (error) {
    leave();
    throw error;
  }
}

async function createInFolder(dataDirectory: string): Promise<Connection> {
  mkdirSync(dataDirectory, { recursive: true, mode: 0o700 });
  const release = lockDataFolder(dataDirectory, join(dataDirectory, "postgres.lock"));
  try {
    return embedded(await PGlite.create(join(dataDirectory, "postgres")), release);
  } catch (error) {
    release();
    throw error;
  }
}
