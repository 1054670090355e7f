export { type Connection, openConnection } from "../connection";
export { createDatabase } from "../open-database";
export { draftMigration } from "./draft-migration";
export { migrate } from "./migrate";
export { openMigratedDatabase } from "./open-migrated-database";
