import type { Connection } from "../connection";
import { readMigrationList } from "./files";
import { isUpToDate } from "./is-up-to-date";
import { withSchemaEngine } from "./schema-engine";

/** Nothing of ours is managed by anybody else, so nothing is left out. */
export const noFilters = { externalTables: [], externalEnums: [] };

/**
 * Applies the migrations that are not applied yet and keeps `_prisma_migrations` as `prisma migrate deploy`
 * does. Returns the names just applied.
 */
export async function migrate(connection: Connection): Promise<string[]> {
  if (await isUpToDate(connection)) return [];
  return withSchemaEngine(connection, undefined, async (engine) => {
    const { appliedMigrationNames } = await engine.applyMigrations({
      migrationsList: readMigrationList(),
      filters: noFilters,
    });
    return appliedMigrationNames;
  });
}
