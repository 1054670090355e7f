import type { Database } from "@probeworthy/database";
import { college } from "./people";

export const seededAction = "demo.seeded";

/** Is the demo in this database, and complete? A start that was interrupted leaves it unfinished. */
export async function demoState(database: Database): Promise<"absent" | "unfinished" | "complete"> {
  const found = (await database.organisations.listAll()).find(({ name }) => name === college.name);
  if (found === undefined) return "absent";
  const entries = await database.audit.list({
    organisationId: found.id,
    limit: 1,
    resource: { type: "organisation", id: found.id },
  });
  return entries.some(({ action }) => action === seededAction) ? "complete" : "unfinished";
}
