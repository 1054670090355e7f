import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import type { SchemaEngine } from "@prisma/schema-engine-wasm";
import * as glue from "@prisma/schema-engine-wasm/schema_engine_bg";
import type { Connection } from "../connection";

/** The part of WebAssembly used here; its types come with the browser's library, which this package leaves out. */
interface WebAssemblyHost {
  WebAssembly: {
    Module: new (bytes: object) => object;
    Instance: new (module: object, imports: Record<string, unknown>) => { exports: Record<string, unknown> };
  };
}

const { WebAssembly } = globalThis as unknown as WebAssemblyHost;

/**
 * Prisma's own migration engine, as WebAssembly. The package is meant for bundlers; this is what its entry
 * file does, spelled out for Node.
 */
function loadEngine(): typeof glue {
  const require = createRequire(import.meta.url);
  const folder = dirname(require.resolve("@prisma/schema-engine-wasm/schema_engine_bg"));
  const module = new WebAssembly.Module(readFileSync(join(folder, "schema_engine_bg.wasm")));
  const instance = new WebAssembly.Instance(module, { "./schema_engine_bg.js": glue });
  glue.__wbg_set_wasm(instance.exports);
  const start = instance.exports.__wbindgen_start;
  if (typeof start !== "function") throw new Error("@prisma/schema-engine-wasm has no __wbindgen_start");
  start();
  return glue;
}

let loaded: typeof glue | undefined;

/** Runs `use` with an engine bound to the connection. */
export async function withSchemaEngine<Value>(
  connection: Connection,
  datamodels: [string, string][] | undefined,
  use: (engine: SchemaEngine) => Promise<Value>,
): Promise<Value> {
  loaded ??= loadEngine();
  const log = () => {};
  const adapter = bindMigrationAwareSqlAdapterFactory(connection.migrationAdapter);
  const engine = await loaded.SchemaEngine.new({ datamodels }, log, adapter);
  try {
    return await use(engine);
  } finally {
    engine.free();
  }
}
