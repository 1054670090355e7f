import "server-only";
import type { Database } from "@probeworthy/database";
import { logger } from "../logger";

/** Whether the database answers. The reason of a failure goes to the log, not to whoever asks. */
export async function checkDatabase(database: Database): Promise<boolean> {
  try {
    await database.ping();
    return true;
  } catch (error) {
    logger().error({ err: error }, "database does not answer");
    return false;
  }
}
