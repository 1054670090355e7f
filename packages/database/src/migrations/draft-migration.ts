import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { openConnection } from "../connection";
import { migrationsFolder, readMigrationList, readSchema } from "./files";
import { noFilters } from "./migrate";
import { withSchemaEngine } from "./schema-engine";

/**
 * Writes the migration that leads from the migrations on disk to the schema on disk; null when there is no
 * difference. The engine replays the existing migrations on a throw-away in-memory database to know where it
 * starts from.
 */
export async function draftMigration(name: string, now: Date): Promise<string | null> {
  const connection = await openConnection({});
  try {
    const { exitCode, stdout } = await withSchemaEngine(connection, undefined, async (engine) => {
      const list = readMigrationList();
      return engine.diff({
        from: list.migrationDirectories.length === 0 ? { tag: "empty" } : { tag: "migrations", ...list },
        to: { tag: "schemaDatamodel", ...readSchema() },
        script: true,
        exitCode: true,
        filters: noFilters,
      });
    });
    if (exitCode !== 2 || stdout === null) return null;
    const stamp = now.toISOString().replace(/\D/g, "").slice(0, 14);
    const folder = join(migrationsFolder, `${stamp}_${name}`);
    mkdirSync(folder, { recursive: true });
    const path = join(folder, "migration.sql");
    writeFileSync(path, stdout);
    return path;
  } finally {
    await connection.close();
  }
}
