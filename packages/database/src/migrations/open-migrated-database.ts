import { type ConnectionOptions, openConnection } from "../connection";
import { createDatabase, type Database } from "../open-database";
import { migrate } from "./migrate";

/** Opens a database and brings it up to date first. Not for the web: it loads the migration engine. */
export async function openMigratedDatabase(
  options: ConnectionOptions,
): Promise<{ database: Database; applied: string[] }> {
  const connection = await openConnection(options);
  try {
    const applied = await migrate(connection);
    return { database: createDatabase(connection), applied };
  } catch (error) {
    await connection.close();
    throw error;
  }
}
