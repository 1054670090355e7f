import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { MigrationList, SchemasContainer } from "@prisma/schema-engine-wasm";

export const prismaFolder = fileURLToPath(new URL("../../../../prisma/", import.meta.url));
export const migrationsFolder = join(prismaFolder, "migrations");

/** The migrations on disk, in the layout Prisma's command line uses. */
export function readMigrationList(folder: string = migrationsFolder): MigrationList {
  const lockfile = join(folder, "migration_lock.toml");
  const names = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
  return {
    baseDir: folder,
    lockfile: {
      path: "migration_lock.toml",
      content: existsSync(lockfile) ? readFileSync(lockfile, "utf8") : null,
    },
    shadowDbInitScript: "",
    migrationDirectories: names.map((name) => ({
      path: name,
      migrationFile: {
        path: "migration.sql",
        content: { tag: "ok", value: readFileSync(join(folder, name, "migration.sql"), "utf8") },
      },
    })),
  };
}

export function readSchema(folder: string = join(prismaFolder, "schema")): SchemasContainer {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith(".prisma"))
    .sort()
    .map((name) => ({ path: join(folder, name), content: readFileSync(join(folder, name), "utf8") }));
  return { files };
}
