import { migrate } from "@probeworthy/database/migrations";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { backends, type TestDatabase } from "../support/databases";

describe.each(backends)("migrations on $name", ({ open }) => {
  let test: TestDatabase;
  beforeAll(async () => {
    test = await open({ from: "nothing" });
  });
  afterAll(() => test.close());

  it("are recorded in the table Prisma keeps, finished and with their checksums", async () => {
    const rows = await test.sql(
      `SELECT "migration_name", "checksum", "finished_at" IS NOT NULL AS "finished", "rolled_back_at", "applied_steps_count"
       FROM "_prisma_migrations" ORDER BY "migration_name"`,
    );
    expect(rows.map(({ migration_name }) => migration_name)).toEqual([
      "20261124000000_initial",
      "20261124000100_immutable_rows",
      "20261125083743_vehicle_drafts",
      "20261125085131_vehicle_sheets",
    ]);
    for (const row of rows) {
      expect(row).toMatchObject({ finished: true, rolled_back_at: null, applied_steps_count: 1 });
      expect(row.checksum).toMatch(/^[0-9a-f]{64}$/);
    }
  });

  it("applied again change nothing", async () => {
    const before = await test.sql(`SELECT * FROM "_prisma_migrations" ORDER BY "id"`);
    expect(await migrate(test.connection)).toEqual([]);
    expect(await test.sql(`SELECT * FROM "_prisma_migrations" ORDER BY "id"`)).toEqual(before);
  });
});
