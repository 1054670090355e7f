import type { Database } from "@probeworthy/database";

export { demoSignIns } from "./people";
export { demoState } from "./state";

/** Loads the content only now: most starts have nothing to seed. */
export async function seed(database: Database, now: Date): Promise<void> {
  const [{ starterContent }, { seedDemo }] = await Promise.all([import("./content"), import("./demo")]);
  await seedDemo(database, starterContent, now);
}
