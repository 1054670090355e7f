import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const web = fileURLToPath(new URL("./apps/web", import.meta.url));

// The guard package throws outside Next.js; tests of server code run without it.
const webAliases = {
  "@": web,
  "server-only": `${web}/node_modules/server-only/empty.js`,
};

const project = (
  name: string,
  include: string[],
  extra: object = {},
  alias: Record<string, string> = {},
) => ({
  resolve: { alias },
  test: {
    name,
    include,
    environment: "node" as const,
    setupFiles: ["tests/support/property-seed.ts"],
    ...extra,
  },
});

export default defineConfig({
  test: {
    projects: [
      project("unit", ["packages/*/src/**/*.test.{ts,mjs}", "apps/web/**/*.test.ts"], {}, webAliases),
      project("reference", ["tests/reference/**/*.test.ts"], { testTimeout: 120_000, hookTimeout: 120_000 }),
      project(
        "contract",
        ["tests/contract/**/*.test.ts"],
        {
          globalSetup: ["tests/support/prepare-databases.ts"],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
        webAliases,
      ),
      project("integration", ["tests/integration/**/*.test.ts"], {
        globalSetup: ["tests/support/prepare-databases.ts"],
        testTimeout: 120_000,
        hookTimeout: 120_000,
      }),
    ],
  },
});
