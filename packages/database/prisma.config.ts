// Read by the Prisma command line only (`pnpm prisma migrate deploy` in this folder). The application itself
// gets its address from src/connection.ts.
import { defineConfig } from "prisma/config";

const url = process.env.DATABASE_URL;

export default defineConfig({
  schema: "../../prisma/schema",
  migrations: { path: "../../prisma/migrations" },
  ...(url === undefined ? {} : { datasource: { url } }),
});
