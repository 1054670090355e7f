import { createHash } from "node:crypto";
import type { Connection } from "../connection";
import { readMigrationList } from "./files";

/**
 * Are exactly the migrations on disk applied, unchanged and finished? Asked before the migration engine is
 * loaded, which takes longer than everything else a start does. Any doubt answers no, and the engine decides.
 */
export async function isUpToDate(connection: Connection): Promise<boolean> {
  const adapter = await connection.adapter.connect();
  try {
    const query = (sql: string) => adapter.queryRaw({ sql, args: [], argTypes: [] });
    const table = await query(`SELECT to_regclass('_prisma_migrations') IS NOT NULL`);
    if (table.rows[0]?.[0] !== true) return false;
    const { rows } = await query(
      `SELECT "migration_name", "checksum" FROM "_prisma_migrations"
       WHERE "finished_at" IS NOT NULL AND "rolled_back_at" IS NULL`,
    );
    const unfinished = await query(
      `SELECT 1 FROM "_prisma_migrations" WHERE "finished_at" IS NULL AND "rolled_back_at" IS NULL`,
    );
    const applied = new Map(rows.map(([name, checksum]) => [name, checksum]));
    const { migrationDirectories } = readMigrationList();
    return (
      unfinished.rows.length === 0 &&
      applied.size === migrationDirectories.length &&
      migrationDirectories.every(({ path, migrationFile: { content } }) => {
        const checksum = createHash("sha256").update(content.value).digest("hex");
        return content.tag === "ok" && applied.get(path) === checksum;
      })
    );
  } finally {
    await adapter.dispose();
  }
}
