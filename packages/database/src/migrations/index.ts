export { openConnection } from "../connection";
export { draftMigration } from "./draft-migration";
export { migrate } from "./migrate";
export { openMigratedDatabase } from "./open-migrated-database";
